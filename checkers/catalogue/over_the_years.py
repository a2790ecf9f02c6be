"""How have this device's readings changed, when is a limit reached, when is the next test?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.readings import FOLDED, Circuit, Instrument
from checkers.domain.errors import quoted
from checkers.domain.inputs.fields import group, many, text
from checkers.domain.question import Question
from checkers.domain.verdicts import Figure, Outcome, Result
from checkers.judgement.case import Case
from checkers.judgement.device.still_to_test import still_to_do
from checkers.judgement.limits.safe_rounding import rounded
from checkers.judgement.years.calendar_text import Event, calendar_text
from checkers.judgement.years.due_dates import Due, due_tests, parse_every, places_of
from checkers.judgement.years.findings import (
    NAMES,
    is_changed,
    judge_changes,
    judge_due,
    judge_latest,
    judge_trends,
    limit_reached,
)
from checkers.judgement.years.trend import Band, Trend, trend_of
from checkers.judgement.years.visits import Series, Visit, last_days, series_of
from checkers.wording.book import part

EVERY_HELP = "Such as 6 months or 1 year; it counts where it is shorter than that of the code."


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A device with its readings of several visits, and where it stands."""

    device: Device = group(Device, "Device", default=Device)
    history: tuple[Visit, ...] = many(
        Visit, "Readings with their days", each="Reading", least=1, most=200, folded=FOLDED
    )
    label: str = text("Name of the device", most=80, explain="Stands in the calendar.")
    place: str = text(
        "Kind of place", most=60, explain="As the code names it: construction work, office …"
    )
    timed_test_every: str = text("Timed test every", most=40, explain=EVERY_HELP, advanced=True)
    button_every: str = text("Test button every", most=40, explain=EVERY_HELP, advanced=True)
    instrument: Instrument = group(Instrument, "Instrument", default=Instrument, advanced=True)

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        return {**self._bad_days(), **self._bad_intervals(), **self._bad_place()}

    @property
    def case(self) -> Case:
        """The device as it is judged today."""
        return Case(self.device, Circuit(), self.instrument, self.local_code, self.day)

    @property
    def own_intervals(self) -> dict[str, str]:
        """The person's own intervals by test."""
        return {"trip-time": self.timed_test_every, "button": self.button_every}

    def _bad_days(self) -> dict[str, str]:
        named = {f"history[{place}].on": one.on for place, one in enumerate(self.history)}
        return {
            name: f"{day} is after the day asked about, {self.day}"
            for name, day in named.items()
            if day > self.day
        }

    def _bad_intervals(self) -> dict[str, str]:
        named = {"timed_test_every": self.timed_test_every, "button_every": self.button_every}
        return {
            name: f"{quoted(words)} is no interval such as 6 months or 1 year"
            for name, words in named.items()
            if words and parse_every(words) is None
        }

    def _bad_place(self) -> dict[str, str]:
        known = places_of(self.case)
        if not self.place or self.place.casefold() in known:
            return {}
        listed = ", ".join(known) or "none for this code"
        return {"place": f"{quoted(self.place)} is no kind of place here; known are {listed}"}


def check(inputs: Inputs) -> Result:
    """Judge the newest readings, follow each series over the years, and date the next tests.

    Inputs: a device, its readings with their days, the kind of place.
    Result: findings; in `answer` a trend for each series [ms or mA a year], the next tests, and
    these as iCalendar text.
    """
    case, place = inputs.case, inputs.place.casefold()
    found = series_of(inputs.history, case)
    due = due_tests(case, place, last_days(inputs.history), inputs.own_intervals)
    return Result(
        findings=[
            *judge_latest(found, case),
            *judge_changes(found),
            *judge_trends(found, due),
            *judge_due(due, case),
        ],
        answer={name: value for name, value in _answer(inputs, found, due).items() if value},
        still_to_do=still_to_do(inputs.history, case),
        cautions=(part("years.no-promise"),),
    )


def _answer(inputs: Inputs, found: Sequence[Series], due: Sequence[Due]) -> dict[str, Any]:
    return {
        "trends": [_trend(series, due, inputs.day) for series in found if series.unit],
        "next_tests": [_next(one, inputs.day) for one in due],
        "calendar": calendar_text([_event(one, inputs) for one in due], inputs.day),
    }


def _trend(series: Series, due: Sequence[Due], today: date) -> dict[str, Any]:
    trend = trend_of(series.points)
    shown: dict[str, Any] = {"test": series.name, "readings": len(series.points)}
    if trend is None:
        return {**shown, "trend": part("years.too-few")}
    unit = series.unit
    return {
        **shown,
        "trend": _way(trend),
        "slope_per_year": Figure(rounded(trend.slope), unit),
        "slope_low": Figure(rounded(trend.slope_band.low), unit),
        "slope_high": Figure(rounded(trend.slope_band.high), unit),
        "changed": part("years.changed" if is_changed(series) else "years.not-changed"),
        **_reached(series, trend),
        **_expected(trend, unit, due, today),
    }


def _way(trend: Trend) -> str:
    if not trend.is_seen:
        return part("years.no-trend")
    return part("years.rising" if trend.slope > 0 else "years.falling")


def _reached(series: Series, trend: Trend) -> dict[str, Any]:
    reached = limit_reached(series, trend)
    if reached is None:
        return {}
    return {
        "limit_reached_in": reached.day.year,
        "limit_reached_from": reached.earliest.year,
        "limit_reached_until": reached.latest.year,
    }


def _expected(trend: Trend, unit: str, due: Sequence[Due], today: date) -> dict[str, Any]:
    days: list[date] = [one.day for one in due if one.test == "trip-time"]
    if not days:
        return {}
    band: Band = trend.expected(max(today, min(days)))
    return {
        "expected_next": Figure(rounded(band.value), unit),
        "expected_low": Figure(rounded(max(band.low, 0.0)), unit),
        "expected_high": Figure(rounded(band.high), unit),
    }


def _next(due: Due, today: date) -> dict[str, Any]:
    """Return a test that is due, on no day of the past: what is overdue is due today."""
    late = {"overdue_since": due.day.isoformat()} if due.day < today else {}
    return {
        "test": due.test,
        "due": max(today, due.day).isoformat(),
        **late,
        "every": due.every.words,
        "last": _last_done(due),
        "asked_by": due.asked_by,
    }


def _event(due: Due, inputs: Inputs) -> Event:
    facts = {
        "test": part(NAMES[due.test]),
        "device": inputs.label or part("years.device"),
        "every": due.every.words.removeprefix("each ").removeprefix("every "),
        "asked_by": due.asked_by,
        "last": _last_done(due),
        "day": due.day,
    }
    late = due.day < inputs.day
    return Event(
        day=max(inputs.day, due.day),
        title=part("years.event", **facts),
        description=part("years.event-told-overdue" if late else "years.event-told", **facts),
        daily=due.every.is_daily,
    )


def _last_done(due: Due) -> str:
    return due.last.isoformat() if due.last else part("years.not-known")


def _visits(*figures: tuple[str, str], **more: Any) -> list[dict[str, Any]]:
    test = {"test": "trip-time", "multiple": 1, "waveform": "ac", "phase": "0", **more}
    return [{**test, "on": on, "value": value} for on, value in figures]


def _example(title: str, outcome: Outcome, **request: Any) -> Example:
    device = {"type": "A", "rated_residual_current": "30 mA"}
    return Example(title, {"on": "2026-11-24", "device": device, **request}, outcome)


CHECKER = Checker(
    slug="over-the-years",
    title="Over the years",
    question="How have this device's readings changed, when would a limit be reached, and when "
    "is the next test?",
    inputs=Inputs,
    check=check,
    examples=(
        _example(
            "Four visits with nothing to see",
            Outcome.PASS,
            code="gb",
            label="RCD 1",
            history=[
                *_visits(("2023-11-01", "24 ms"), ("2024-11-03", "26 ms"), ("2025-11-02", "25 ms")),
                *_visits(("2026-11-20", "27 ms")),
                {"on": "2026-11-20", "test": "button", "value": "operates"},
            ],
        ),
        _example(
            "Slower at each visit, by a good instrument",
            Outcome.CANNOT_SAY,
            code="gb",
            instrument={"time_uncertainty": "3 ms"},
            history=_visits(
                ("2022-11-01", "60 ms"),
                ("2023-11-01", "103 ms"),
                ("2024-11-01", "141 ms"),
                ("2025-11-01", "182 ms"),
                ("2026-11-01", "220 ms"),
            ),
        ),
    ),
)
