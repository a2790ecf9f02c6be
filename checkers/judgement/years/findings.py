"""What readings of several visits tell: the newest verdict, changes, trends, and what is due."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence
from datetime import date

from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.device.still_to_test import trip_not_shown
from checkers.judgement.readings.any_reading import judge_reading
from checkers.judgement.years.due_dates import Due, places_of
from checkers.judgement.years.trend import Span, Trend, normalised_difference, trend_of
from checkers.judgement.years.visits import Series
from checkers.wording.book import part
from checkers.wording.finding import finding

NAMES = {
    "trip-time": "years.trip-time",
    "button": "years.button",
    "ramp": "years.ramp",
    "no-trip": "years.no-trip",
}
DATED_FROM = 3  # visits


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


def judge_due(due: Sequence[Due], case: Case) -> list[Finding]:
    """Return findings on tests that are overdue, and where the interval is not known."""
    overdue = [_overdue(one) for one in due if one.last is not None and one.day < case.day]
    places = places_of(case)
    if overdue or due or not places:
        return overdue
    return [_open("years.place-missing", {"places": ", ".join(places)})]


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
    facts = {
        "name": series.name,
        "now": format_quantity(now.value, series.unit),
        "step": format_quantity(abs(now.value - before.value), series.unit),
        "before": before.day,
    }
    more = now.value > before.value
    return _open("years.more-than-before" if more else "years.less-than-before", facts)


def _toward_the_limit(series: Series, trend: Trend, reached: Span) -> Finding:
    facts = {
        "name": series.name,
        "slope": format_number(abs(trend.slope), 2),
        "unit": series.unit,
        "day": reached.day,
        "earliest": reached.earliest,
        "latest": reached.latest,
    }
    return _open("years.rises-to-limit" if trend.slope > 0 else "years.falls-to-limit", facts)


def _hidden(series: Series) -> Finding:
    first, last = series.points[0], series.points[-1]
    facts = {
        "name": series.name,
        "first": format_quantity(first.value, series.unit),
        "first_day": first.day,
        "last": format_quantity(last.value, series.unit),
        "last_day": last.day,
    }
    return _open("years.trend-hidden", facts)


def _overdue(due: Due) -> Finding:
    facts = {
        "test": part(NAMES[due.test]),
        "day": due.day,
        "every": due.every.words,
        "last": due.last,
        "asked_by": due.asked_by,
    }
    return finding(
        "years.overdue",
        Outcome.CANNOT_SAY,
        Judges.INSTALLATION_CODE,
        facts,
        sources=due.sources,
    )


def _open(code: str, facts: Mapping[str, object]) -> Finding:
    return finding(code, Outcome.CANNOT_SAY, Judges.FUNCTION, facts)
