"""A time against the limits that bind at its current, also between two rows of a table."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading
from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.against_limits import compare_with, finding_for
from checkers.judgement.limits.numbers import reading_numbers
from checkers.judgement.limits.reading_words import name_of
from checkers.judgement.limits.time_limits import BindingTimes
from checkers.judgement.readings.verdict import Judged

NEVER_TRIPPED = 3_600_000.0
AFTER_A_FAILURE = (
    "Take the loads off and repeat; if it still fails, do not leave the device in service."
)
COMPARE = "Compare with the break times that its manufacturer declares."
NEXT_STEPS = {
    Outcome.FAIL: AFTER_A_FAILURE,
    Outcome.BORDERLINE: "Repeat with the loads off, and with a more exact instrument.",
    Outcome.CANNOT_SAY: "Set a longer test, so that the timer reaches the limit.",
}


def judge_time(reading: Reading, case: Case, times: BindingTimes) -> Judged:
    """Judge a time by the times that bind at its current.

    A reading inside what every row near its current asks passes, one outside what a row
    promises there fails; between the two no row tells.
    """
    promised, sure = times.promised, times.sure
    if sure == promised:
        return _compared(reading, case, promised)
    if sure is not None and _outcome(reading, case, sure) is Outcome.PASS:
        return _compared(reading, case, sure)
    if _outcome(reading, case, promised) is not Outcome.PASS:
        return _compared(reading, case, promised)
    return Judged(_left_open(reading, case, times))


def by_least_time(reading: Reading, case: Case, times: BindingTimes) -> Judged | None:
    """Return the finding on a trip before the least time that binds, or None where it is not."""
    alone = dataclasses.replace(times.promised, at_most=None)
    if not alone.is_set or reading.measured.said not in (Said.FIGURE, Said.LESS_THAN):
        return None
    judged = _compared(reading, case, alone)
    return judged if judged.finding.outcome in (Outcome.FAIL, Outcome.BORDERLINE) else None


def as_time(measured: Measured) -> Measured:
    """Return a device that never tripped as one that took longer than any limit."""
    return (
        Measured(Said.MORE_THAN, NEVER_TRIPPED, "ms") if measured.said is Said.NO_TRIP else measured
    )


def _outcome(reading: Reading, case: Case, limit: Limit) -> Outcome:
    if not limit.is_set:
        return Outcome.CANNOT_SAY
    return compare_with(limit, as_time(reading.measured), case).outcome


def _compared(reading: Reading, case: Case, limit: Limit) -> Judged:
    compared = compare_with(limit, as_time(reading.measured), case)
    do_next = NEXT_STEPS.get(compared.outcome, "")
    finding = finding_for(reading, limit, case, compared, do_next=do_next)
    return Judged(finding, compared.outcome is Outcome.PASS)


def _left_open(reading: Reading, case: Case, times: BindingTimes) -> Finding:
    """Return the finding on a time that breaks no row, and of which none says that it is met."""
    shown = times.sure or times.promised
    says, do_next = _open_words(reading, times)
    near = case.time_uncertainty(reading.measured.value)
    return Finding(
        about=name_of(reading),
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=shown.judges,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        limit=str(shown),
        do_next=do_next,
        sources=shown.sources,
        numbers=reading_numbers(reading.measured, shown, near),
    )


def _open_words(reading: Reading, times: BindingTimes) -> tuple[str, str]:
    measured, most, promised = reading.measured, times.most, times.promised
    if most.fails is None:
        says = (
            f"{measured} keeps the least time, {promised}. How long the device "
            "may take at most is for its manufacturer to declare."
        )
        return says, COMPARE
    held = format_quantity(most.held or 0.0, "mA")
    if most.passes is None:
        says = (
            f"{measured} is within {promised}, but that limit stands at {held}; "
            "at more current the device must be quicker, and no limit is known there."
        )
        return says, f"Repeat at {held}. {COMPARE}"
    due = format_quantity(most.due or 0.0, "mA")
    says = (
        f"{measured} lies between the limits at {held} and at {due}: what meets both is "
        f"{times.sure}, and no limit is known at the current of this test."
    )
    return says, f"Repeat at {due}, or at {held}."


def changed(
    finding: Finding, says: str, do_next: str, outcome: Outcome = Outcome.CANNOT_SAY
) -> Finding:
    """Return a finding with another outcome, and the words for it."""
    return dataclasses.replace(finding, outcome=outcome, says=says, do_next=do_next)
