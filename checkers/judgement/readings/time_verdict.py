"""A time against the limits that bind at its current, also between two rows of a table."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading
from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.against_limits import compare_with, finding_for
from checkers.judgement.limits.numbers import reading_numbers
from checkers.judgement.limits.time_limits import BindingTimes
from checkers.judgement.readings.verdict import Judged, of_reading
from checkers.wording.book import part

NEVER_TRIPPED = 3_600_000.0
REMEDIES = {
    Outcome.FAIL: "reading.failed",
    Outcome.BORDERLINE: "reading.borderline",
    Outcome.CANNOT_SAY: "reading.cannot-say",
}


def remedy_for(outcome: Outcome) -> str:
    """Return what to do next about a time, in words; nothing where it passes."""
    code = REMEDIES.get(outcome)
    return part(code) if code else ""


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
    do_next = remedy_for(compared.outcome)
    finding = finding_for(reading, limit, case, compared, do_next=do_next)
    return Judged(finding, compared.outcome is Outcome.PASS)


def _left_open(reading: Reading, case: Case, times: BindingTimes) -> Finding:
    """Return the finding on a time that breaks no row, and of which none says that it is met."""
    shown = times.sure or times.promised
    code, facts = _open_code(times)
    near = case.time_uncertainty(reading.measured.value)
    return of_reading(
        code,
        reading,
        Outcome.CANNOT_SAY,
        facts,
        shown.judges,
        limit=str(shown),
        sources=shown.sources,
        numbers=reading_numbers(reading.measured, shown, near),
    )


def _open_code(times: BindingTimes) -> tuple[str, dict[str, object]]:
    """Return why no row tells, with the currents [in words] and limits near this test's."""
    most = times.most
    if most.fails is None:
        return "greatest-time-declared", {"limit": times.promised}
    held = format_quantity(most.held or 0.0, "mA")
    if most.passes is None:
        return "no-limit-at-more", {"limit": times.promised, "held": held}
    due = format_quantity(most.due or 0.0, "mA")
    return "between-limits", {"held": held, "due": due, "both": times.sure}
