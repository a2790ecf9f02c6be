"""No checker passes anything by a code of which no edition is known for the day."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from checkers import run
from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker
from checkers.domain.codes.registry import CODES

LONG_AGO = date(1975, 1, 1)  # believed as a day, and before every edition named for a year
UNKNOWN_THEN = [key for key, code in CODES.items() if not code.edition_on(LONG_AGO)]
PASSES = [
    pytest.param(checker.slug, example.request, id=f"{checker.slug}: {example.title}")
    for checker in CHECKERS
    for example in checker.examples
    if example.outcome == "pass" and checker.slug != "over-the-years"  # its visits have days too
]


@pytest.mark.parametrize(("slug", "request_"), PASSES)
@pytest.mark.parametrize("code", UNKNOWN_THEN)
def test_what_passes_today_is_left_open_for_that_day(
    slug: str, request_: dict[str, Any], code: str
) -> None:
    """The reply says which code, and passes in a code that was known."""
    reply = run(slug, {**request_, "code": code, "on": LONG_AGO.isoformat()})

    assert reply["kind"] == "result"
    assert reply["outcome"] != "pass"
    known = run(slug, {**request_, "on": "2026-11-24"})
    assert known["outcome"] == "pass"


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("checker", CHECKERS, ids=[one.slug for one in CHECKERS])
def test_a_day_that_no_test_can_have_is_refused_by_name(checker: Checker, code: str) -> None:
    """Before there were such devices, or a slip of the year: no checker judges it, for any code."""
    request = {**checker.examples[0].request, "code": code}
    for day in ("0001-01-01", "1950-06-01", "1969-12-31", "2062-01-01", "9999-12-31"):
        assert "on" in run(checker.slug, {**request, "on": day}).get("errors", {}), day


@pytest.mark.parametrize("code", CODES)
def test_no_edition_holds_before_the_year_it_is_named_for(code: str) -> None:
    """An edition of 2018 cannot have been the one to apply in 2017."""
    for edition in CODES[code].editions:
        year = edition.edition[:4]
        if year.isdecimal():
            assert not edition.in_force(date(int(year) - 1, 12, 31)), edition.designation


def test_a_day_of_a_visit_is_held_to_the_same_days() -> None:
    """Each reading of over-the-years has a day of its own."""
    visit = {"test": "trip-time", "multiple": 1, "value": "28 ms", "on": "1950-06-01"}

    assert "history[0].on" in run("over-the-years", {"history": [visit]})["errors"]
