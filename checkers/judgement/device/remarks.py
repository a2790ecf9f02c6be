"""What is worth saying of a time beside its verdict, and changes no outcome."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from checkers.domain.device.readings import Reading, Test, Waveform
from checkers.domain.quantities.measured_value import Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Outcome
from checkers.judgement.case import Case
from checkers.judgement.device.times_at_fault import LEAST_FAULT, in_tt, is_delayed
from checkers.judgement.electrode.disconnection import disconnection_row
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.readings.verdict import Judged
from checkers.wording.book import part
from checkers.wording.finding import with_parts


def with_remarks(
    judged: Sequence[Judged], reading: Reading, readings: Sequence[Reading], case: Case
) -> list[Judged]:
    """Return the findings on a reading, the first with what is worth saying beside it."""
    said = " ".join((*_of_the_start(reading, readings), *_of_tt(judged, reading, case)))
    if not said or not judged:
        return list(judged)
    first = judged[0]
    return [replace(first, finding=with_parts(first.finding, said)), *judged[1:]]


def _of_the_start(reading: Reading, readings: Sequence[Reading]) -> Iterator[str]:
    """Remark a time that is longer than from another start by more than half a period."""
    for other in readings:
        if not (_is_time(reading) and _is_time(other) and _same_but_for_the_start(reading, other)):
            continue
        longer = reading.measured.value - other.measured.value
        if longer > JUDGING.slower_at_more_current:
            more = format_quantity(longer, "ms")
            yield part("device.longer-than-from", longer=more, start=other.phase)


def _of_tt(judged: Sequence[Judged], reading: Reading, case: Case) -> Iterator[str]:
    """Remark a time that its rule allows and that is longer than a fault in TT may last."""
    level, rated = level_of(reading, case), case.device.rated_residual_current
    row = disconnection_row(in_tt(case))
    limit = row.at_most() if row else None
    asked = case.circuit.system == "tt" and reading.waveform == Waveform.AC and _is_time(reading)
    if level is None or rated is None or limit is None or not asked:
        return
    passes = bool(judged) and all(one.finding.outcome is Outcome.PASS for one in judged)
    at_a_fault, longer = level.current >= LEAST_FAULT * rated, reading.measured.value > limit
    within = format_quantity(limit, "ms")
    if longer and passes and not at_a_fault:
        yield part("device.faster-at-fault", limit=within)
    if longer and at_a_fault and is_delayed(case):
        yield part("device.too-long-for-final", limit=within)


def _is_time(reading: Reading) -> bool:
    measured = reading.measured
    return reading.test == Test.TRIP_TIME and measured.said is Said.FIGURE and measured.unit == "ms"


def _same_but_for_the_start(one: Reading, other: Reading) -> bool:
    same = (one.multiple, one.current, one.waveform) == (
        other.multiple,
        other.current,
        other.waveform,
    )
    return same and {one.phase, other.phase} == {"0", "180"}
