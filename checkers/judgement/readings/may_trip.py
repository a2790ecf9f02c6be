"""A current at which the device may trip or hold, or of which no limit is known."""

from __future__ import annotations

from collections.abc import Mapping

from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import SENSES_HALF_WAVES, SENSES_SMOOTH_DC, DeviceType
from checkers.domain.device.readings import HALF_WAVES, Reading, Waveform
from checkers.domain.quantities.measured_value import Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import Demand
from checkers.judgement.limits.time_limits import time_rows
from checkers.judgement.readings.time_verdict import by_least_time
from checkers.judgement.readings.trip_time import judged_by_code
from checkers.judgement.readings.verdict import Judged, of_reading, undecided
from checkers.wording.book import part

SHAPES: dict[str, str] = {
    Waveform.AC: "reading.ac",
    Waveform.SMOOTH_DC: "reading.smooth-dc",
    **dict.fromkeys(HALF_WAVES, "reading.half-wave-current"),
}
TIMED = frozenset({Said.FIGURE, Said.LESS_THAN})


def judge_either(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    """Judge a reading at a current at which the standard lets the device trip or hold."""
    too_early = by_least_time(reading, case, demand.time)
    if too_early is not None:
        return [too_early]
    facts = {"current": format_quantity(demand.current, "mA")}
    sources = demand.band.sources if demand.band else ()
    return [_in_order("either-in-order", reading, facts, sources)]


def judge_not_known(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    """Judge a reading for which the device's own standard has no limit that is known."""
    shape = part(SHAPES[reading.waveform])
    timed, limited = reading.measured.said in TIMED, time_rows(case, reading.waveform)
    if timed and not limited and _need_not_respond(case, reading.waveform):
        facts = {"type": case.device.type, "shape": shape}
        return [_in_order("trip-adds-nothing", reading, facts)]
    current = format_quantity(demand.current, "mA")
    where = "" if demand.band is None else part("reading.at-current", current=current)
    open_ = undecided("no-limit-known", reading, {"shape": shape, "where": where})
    return [*open_, *judged_by_code(reading, case)]


def _need_not_respond(case: Case, waveform: str) -> bool:
    """Tell whether devices of this type, by what the type means, need not sense a waveform."""
    kind = case.device.type
    if kind == DeviceType.UNKNOWN or not case.device.has(Ability.RATING_PRINTED):
        return False
    if waveform in HALF_WAVES:
        return kind not in SENSES_HALF_WAVES
    return waveform == Waveform.SMOOTH_DC and kind not in SENSES_SMOOTH_DC


def _in_order(
    code: str, reading: Reading, facts: Mapping[str, object], sources: tuple[Citation, ...] = ()
) -> Judged:
    return Judged(of_reading(code, reading, Outcome.PASS, facts, sources=sources))
