"""A page is told the day of its build, and how far from it a day may lie without a remark."""

from __future__ import annotations

import tomllib

from build_tools.files.identity import day_of_sources
from build_tools.pages.far_days import FAR_DAYS, far_days


def test_the_day_is_that_of_the_sources() -> None:
    """As the foot of the page tells it."""
    assert far_days()["built"] == day_of_sources().isoformat()


def test_the_spans_stand_in_the_data_with_their_reasons() -> None:
    """An edition lasts some three years: the remark comes before the next one is due."""
    table = tomllib.loads(FAR_DAYS.read_text(encoding="utf-8"))

    assert far_days()["years"] == table["after_build"]["years"] == 2
    assert far_days()["days"] == table["before_build"]["days"] == 1
    assert "three years" in table["after_build"]["why"]
    assert table["before_build"]["why"]
