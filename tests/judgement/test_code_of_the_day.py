"""No checker passes anything by a code of which no edition is known for the day."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from checkers import run
from checkers.catalogue import CHECKERS
from checkers.domain.codes import CODES

LONG_AGO = date(1950, 1, 1)
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
