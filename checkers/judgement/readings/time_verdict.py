"""A time against the limits that bind at its current, also between two rows of a table."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

from checkers.domain.device.readings import Reading
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.documents import Citation
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.against_limits import Rule, compare_with, finding_for
from checkers.judgement.limits.comparison import Limits
from checkers.judgement.limits.numbers import reading_numbers
from checkers.judgement.limits.reading_words import citations, limit_words, name_of
from checkers.judgement.limits.time_limits import TimeLimit
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


@dataclass(frozen=True, slots=True)
class TimeRule:
    """The times that bind at a current, whose rule they are, and where they stand."""

    limit: TimeLimit
    judges: Judges
    sources: tuple[Citation, ...]


def product_rule(limit: TimeLimit) -> TimeRule:
    """Return the rule of the device's product standard."""
    return TimeRule(limit, Judges.DEVICE_STANDARD, citations(*limit.rows))


def judge_time(reading: Reading, case: Case, rule: TimeRule) -> Judged:
    """Judge a time by the times that bind at its current.

    A reading inside what every row near its current asks passes, one outside what a row
    promises there fails; between the two no row tells.
    """
    broken, met = _broken(case, rule), _met(case, rule)
    if met is not None and met.limits == broken.limits:
        return _compared(reading, broken)
    if met is not None and _outcome(reading, met) is Outcome.PASS:
        return _compared(reading, met)
    if _outcome(reading, broken) is not Outcome.PASS:
        return _compared(reading, broken)
    return Judged(_left_open(reading, case, rule, broken))


def by_least_time(reading: Reading, case: Case, rule: TimeRule) -> Judged | None:
    """Return the finding on a trip before the least time that binds, or None where it is not."""
    at_least = rule.limit.at_least
    if at_least is None or reading.measured.said not in (Said.FIGURE, Said.LESS_THAN):
        return None
    alone = _rule(case, rule, Limits(at_least=at_least))
    judged = _compared(reading, alone)
    return judged if judged.finding.outcome in (Outcome.FAIL, Outcome.BORDERLINE) else None


def _broken(case: Case, rule: TimeRule) -> Rule:
    """Return the limits outside which the reading breaks the rule."""
    return _rule(case, rule, Limits(rule.limit.at_least, rule.limit.at_most))


def _met(case: Case, rule: TimeRule) -> Rule | None:
    """Return the limits inside which the reading surely meets the rule, if there are any."""
    most, least = rule.limit.most, rule.limit.least
    if most.passes is None:
        return None
    return _rule(case, rule, Limits(least.passes, most.passes))


def _rule(case: Case, rule: TimeRule, limits: Limits) -> Rule:
    return Rule(
        limits=limits,
        judges=rule.judges,
        sources=rule.sources,
        unit="ms",
        uncertainty_at_most=case.time_uncertainty(limits.at_most or 0.0),
        uncertainty_at_least=case.time_uncertainty(limits.at_least or 0.0),
    )


def as_time(measured: Measured) -> Measured:
    """Return a device that never tripped as one that took longer than any limit."""
    return (
        Measured(Said.MORE_THAN, NEVER_TRIPPED, "ms") if measured.said is Said.NO_TRIP else measured
    )


def _outcome(reading: Reading, rule: Rule) -> Outcome:
    if rule.limits == Limits():
        return Outcome.CANNOT_SAY
    return compare_with(rule, as_time(reading.measured), JUDGING.confidence).outcome


def _compared(reading: Reading, rule: Rule) -> Judged:
    compared = compare_with(rule, as_time(reading.measured), JUDGING.confidence)
    do_next = NEXT_STEPS.get(compared.outcome, "")
    finding = finding_for(reading, rule, compared, do_next=do_next)
    return Judged(finding, compared.outcome is Outcome.PASS)


def _left_open(reading: Reading, case: Case, rule: TimeRule, broken: Rule) -> Finding:
    """Return the finding on a time that breaks no row, and of which none says that it is met."""
    limit = rule.limit
    met = Limits(limit.least.passes, limit.most.passes)
    shown = broken.limits if limit.most.passes is None else met
    says, do_next = _open_words(reading, limit, broken.limits, met)
    near = case.time_uncertainty(reading.measured.value)
    return Finding(
        about=name_of(reading),
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=rule.judges,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        limit=limit_words(shown, "ms"),
        do_next=do_next,
        sources=rule.sources,
        numbers=reading_numbers(reading.measured, shown, "ms", near),
    )


def _open_words(reading: Reading, limit: TimeLimit, broken: Limits, met: Limits) -> tuple[str, str]:
    measured, most = reading.measured, limit.most
    if most.fails is None:
        says = (
            f"{measured} keeps the least time, {limit_words(broken, 'ms')}. How long the device "
            "may take at most is for its manufacturer to declare."
        )
        return says, COMPARE
    held = format_quantity(most.held or 0.0, "mA")
    if most.passes is None:
        says = (
            f"{measured} is within {limit_words(broken, 'ms')}, but that limit stands at {held}; "
            "at more current the device must be quicker, and no limit is known there."
        )
        return says, f"Repeat at {held}. {COMPARE}"
    due = format_quantity(most.due or 0.0, "mA")
    says = (
        f"{measured} lies between the limits at {held} and at {due}: what meets both is "
        f"{limit_words(met, 'ms')}, and no limit is known at the current of this test."
    )
    return says, f"Repeat at {due}, or at {held}."


def changed(
    finding: Finding, says: str, do_next: str, outcome: Outcome = Outcome.CANNOT_SAY
) -> Finding:
    """Return a finding with another outcome, and the words for it."""
    return dataclasses.replace(finding, outcome=outcome, says=says, do_next=do_next)
