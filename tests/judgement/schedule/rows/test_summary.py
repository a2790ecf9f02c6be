"""What is said of a schedule as a whole keeps to what was read."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest

from checkers import run

HEADINGS = "Device,Type,IΔn,x1 0° (ms),Date"


def answer(*rows: str, headings: str = HEADINGS, **more: Any) -> dict[str, Any]:
    """Return the answer on a schedule."""
    asked = {"code": "gb", "on": "2026-11-24", "text": "\n".join((headings, *rows)) + "\n"}
    return dict(run("schedule", {**asked, **more}))


@pytest.mark.parametrize(("code", "first"), [("gb", "the day"), ("us", "the month")])
def test_days_are_said_to_be_read_as_they_are(code: str, first: str) -> None:
    """Dates of the United States have the month first; elsewhere the day is."""
    assumed = answer("RCD 1,A,30 mA,28,3/4/2026", code=code)["answer"]["assumed"]

    assert f"A day such as 3/4/2026 was read with {first} first." in assumed


def test_the_rate_of_a_survey_is_the_published_one() -> None:
    """Social housing, United Kingdom, 2007: 3 % of 607 failed the timed test, as published."""
    surveys = answer("RCD 1,A,30 mA,28,3/4/2026")["answer"]["surveys"]
    told = {one["says"][:48]: one["failed"] for one in surveys}

    assert told["social housing, United Kingdom, 2007: almost 3 %"] == {"value": 3.0, "unit": "%"}


@pytest.mark.parametrize(("ahead", "noted"), [(0, False), (1, True)])
def test_today_is_no_day_of_the_future(ahead: int, noted: bool) -> None:
    """A test of today counts as one; one of tomorrow cannot have been."""
    day = date.today() + timedelta(days=ahead)  # noqa: DTZ011  # the day where the person stands
    found = answer(f"RCD 1,A,30 mA,28,{day.isoformat()}")

    assert noted == any("future" in one["says"] for one in found["findings"])


@pytest.mark.parametrize(
    ("n_t", "asked"), [("unsaid", True), ("no-trip", False), ("not-tested", False)]
)
def test_n_t_is_asked_about_until_it_is_told(n_t: str, asked: bool) -> None:
    """What n/t stands for is a question of the whole schedule, and only while it is open."""
    questions = answer("RCD 1,A,30 mA,n/t,3/4/2026", n_t=n_t)["answer"].get("questions", [])

    assert asked == any("n/t" in one.lower() for one in questions)


def test_a_question_counts_columns_as_people_do() -> None:
    """From one: the fourth of four is column 4."""
    asked = answer("RCD 1,A,30 mA,28", headings="Device,Type,IΔn,Trip time (ms)")["answer"]

    assert any(one.startswith("Column 4, Trip time") for one in asked["questions"])
