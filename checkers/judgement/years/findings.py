"""What readings of several visits tell: the newest verdict, changes, trends, and what is due."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from datetime import date

from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.device.still_to_test import trip_not_shown
from checkers.judgement.readings.any_reading import judge_reading
from checkers.judgement.years.due_dates import Due, places_of
from checkers.judgement.years.trend import Span, Trend, normalised_difference, trend_of
from checkers.judgement.years.visits import Series

NAMES = {
    "trip-time": "Timed test",
    "button": "Test button",
    "ramp": "Ramp",
    "no-trip": "No-trip test",
}
DATED_FROM = 3  # visits
FIND_OUT = (
    "Find out what changed: the device, its loads, the wiring, the instrument or its setting. "
    "Repeat both tests in the same way."
)

BETTER_INSTRUMENT = "Test again with a better instrument, or state how exact this one is."


def judge_latest(all_series: Sequence[Series], case: Case) -> list[Finding]:
    """Return the verdict on the newest reading of each series, by the rules of its own day."""
    newest = [one.latest for one in all_series if not is_superseded(one, all_series)]
    judged = [
        one
        for visit in newest
        for one in judge_reading(visit, dataclasses.replace(case, day=visit.on))
    ]
    return [*(one.finding for one in judged), *trip_not_shown(judged)]


def judge_changes(all_series: Sequence[Series]) -> list[Finding]:
    """Return a finding for each series whose newest reading differs from the one before."""
    return [_change(series) for series in all_series if is_changed(series)]


def judge_trends(all_series: Sequence[Series], due: Sequence[Due]) -> list[Finding]:
    """Return a finding for each series that may reach a limit before the test is due again."""
    timed = [one.day for one in due if one.test == "trip-time"]
    before = min(timed, default=None)
    found = []
    for series in all_series:
        trend = trend_of(series.points)
        reached = limit_reached(series, trend) if trend else None
        if trend and reached and (before is None or reached.earliest <= before):
            found.append(_toward_the_limit(series, trend, reached))
        elif trend and may_be_hidden(series, trend, before):
            found.append(_hidden(series))
    return found


def judge_due(due: Sequence[Due], case: Case, place: str) -> list[Finding]:
    """Return findings on tests that are overdue, and where the interval is not known."""
    overdue = [_overdue(one) for one in due if one.last is not None and one.day < case.day]
    places = places_of(case)
    if overdue or due or not places:
        return overdue
    says = "The code's intervals depend on the kind of place, which is not one it names."
    do_next = f"Say one of: {', '.join(places)}." if place else f"Say which: {', '.join(places)}."
    return [_open("next tests", says, do_next)]


def is_superseded(series: Series, all_series: Sequence[Series]) -> bool:
    """Tell whether the same test was made later, with a start that does not tell it apart.

    A failure from 180° is not settled by a later test from 0°.
    """
    return any(
        other.latest.on > series.latest.on
        and other.way[:-1] == series.way[:-1]
        and "" in (other.latest.phase, series.latest.phase)
        for other in all_series
    )


def is_changed(series: Series) -> bool:
    """Tell whether the last two readings differ by more than the instruments explain."""
    return len(series.points) > 1 and normalised_difference(*series.points[-2:]) > 1


def limit_reached(series: Series, trend: Trend) -> Span | None:
    """Return when the limit that a trend runs towards is reached, if it is still to come.

    Two visits date nothing: a line through two points has no scatter of its own.
    """
    if len({one.day for one in series.points}) < DATED_FROM:
        return None
    limits = series.limit
    limit = limits.at_most if trend.slope > 0 else limits.at_least
    reached = None if limit is None else trend.reaches(limit)
    newest = series.points[-1].day if series.points else date.min
    return reached if reached and reached.latest >= newest else None


def may_be_hidden(series: Series, trend: Trend, before: date | None) -> bool:
    """Tell whether the instrument hides a trend that the figures show and that may matter.

    It may where the line, as unsure as the instrument leaves it, may be at the limit by a day.
    """
    shown = trend_of(series.by_figures)
    if trend.is_seen or shown is None or limit_reached(series, shown) is None:
        return False
    if before is None:
        return True
    line, limits = trend.line(before), series.limit
    if shown.slope > 0:
        return limits.at_most is not None and line.high >= limits.at_most
    return limits.at_least is not None and line.low <= limits.at_least


def _change(series: Series) -> Finding:
    before, now = series.points[-2:]
    step = format_quantity(abs(now.value - before.value), series.unit)
    way = "more" if now.value > before.value else "less"
    says = (
        f"{format_quantity(now.value, series.unit)} is {step} {way} than on {before.day}: a change "
        "larger than the instruments explain."
    )
    return _open(f"change of {series.name}", says, FIND_OUT)


def _toward_the_limit(series: Series, trend: Trend, reached: Span) -> Finding:
    slope = format_number(abs(trend.slope), 2)
    way = "rises" if trend.slope > 0 else "falls"
    says = (
        f"It {way} by {slope} {series.unit} a year, more than the instruments explain. At that "
        f"pace the limit is reached about {reached.day}, between {reached.earliest} and "
        f"{reached.latest}."
    )
    return _open(f"trend of {series.name}", says, f"Test again before {reached.earliest}.")


def _hidden(series: Series) -> Finding:
    first, last = series.points[0], series.points[-1]
    says = (
        f"From {format_quantity(first.value, series.unit)} on {first.day} to "
        f"{format_quantity(last.value, series.unit)} on {last.day} the figures run towards the "
        "limit. The instrument is not good enough to tell whether the device changes."
    )
    return _open(f"trend of {series.name}", says, BETTER_INSTRUMENT)


def _overdue(due: Due) -> Finding:
    name = NAMES.get(due.test, due.test)
    says = (
        f"{name} is overdue since {due.day}: asked for {due.every.words}, last done {due.last} "
        f"({due.asked_by})."
    )
    finding = _open("next tests", says, "Do it now: what the device does today is not known.")
    return dataclasses.replace(finding, judges=Judges.INSTALLATION_CODE, sources=due.sources)


def _open(about: str, says: str, do_next: str) -> Finding:
    return Finding(
        about=about,
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.FUNCTION,
        do_next=do_next,
    )
