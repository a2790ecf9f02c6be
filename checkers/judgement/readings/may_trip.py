"""A current at which the device may trip or hold, or of which no limit is known."""

from __future__ import annotations

from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import SENSES_HALF_WAVES, SENSES_SMOOTH_DC, DeviceType
from checkers.domain.device.readings import HALF_WAVES, Reading, Waveform
from checkers.domain.quantities.measured_value import Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import Demand
from checkers.judgement.limits.reading_words import name_of
from checkers.judgement.limits.time_limits import time_rows
from checkers.judgement.readings.guards import timer_ran_on, too_quick
from checkers.judgement.readings.time_verdict import by_least_time
from checkers.judgement.readings.trip_time import judged_by_code
from checkers.judgement.readings.verdict import Judged, undecided

SHAPES: dict[str, str] = {
    Waveform.AC: "AC",
    Waveform.SMOOTH_DC: "smooth DC",
    **dict.fromkeys(HALF_WAVES, "half-wave current"),
}
TIMED = frozenset({Said.FIGURE, Said.LESS_THAN})


def judge_either(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    """Judge a reading at a current at which the standard lets the device trip or hold."""
    doubted = _doubted(reading, case)
    if doubted:
        return doubted
    too_early = by_least_time(reading, case, demand.time)
    if too_early is not None:
        return [too_early]
    says = (
        f"At {format_quantity(demand.current, 'mA')} the standard lets the device trip or hold; "
        "either is in order, and nothing more is shown."
    )
    return [_in_order(reading, says, demand.band.sources if demand.band else ())]


def judge_not_known(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    """Judge a reading for which the device's own standard has no limit that is known."""
    doubted = _doubted(reading, case)
    if doubted:
        return doubted
    shape, kind = SHAPES[reading.waveform], case.device.type
    timed, limited = reading.measured.said in TIMED, time_rows(case, reading.waveform)
    if timed and not limited and _need_not_respond(case, reading.waveform):
        says = (
            f"Type {kind} has no limit on {shape}: that it tripped adds nothing, "
            "and does not make it another type."
        )
        return [_in_order(reading, says)]
    where = "" if demand.band is None else f" at {format_quantity(demand.current, 'mA')}"
    open_ = undecided(
        reading,
        f"No limit on {shape} is known for this device{where}, so this shows nothing of it.",
        "Read type and form on the device, and test with a current it must respond to; "
        "if another can occur here, it is not fit for it.",
    )
    return [*open_, *judged_by_code(reading, case)]


def _doubted(reading: Reading, case: Case) -> list[Judged] | None:
    return timer_ran_on(reading, case) or too_quick(reading, case)


def _need_not_respond(case: Case, waveform: str) -> bool:
    """Tell whether devices of this type, by what the type means, need not sense a waveform."""
    kind = case.device.type
    if kind == DeviceType.UNKNOWN or not case.device.has(Ability.RATING_PRINTED):
        return False
    if waveform in HALF_WAVES:
        return kind not in SENSES_HALF_WAVES
    return waveform == Waveform.SMOOTH_DC and kind not in SENSES_SMOOTH_DC


def _in_order(reading: Reading, says: str, sources: tuple[Citation, ...] = ()) -> Judged:
    return Judged(
        Finding(
            about=name_of(reading),
            outcome=Outcome.PASS,
            says=says,
            judges=Judges.DEVICE_STANDARD,
            measured=str(reading.measured),
            measured_as=MeasuredAs.MEASURED,
            sources=sources,
        )
    )
