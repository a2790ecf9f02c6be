"""One limit: its words, its figures, and where it stands."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest

import checkers
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.tables import rows_in
from checkers.domain.sources.documents import cite
from checkers.domain.verdicts import Judges

PACKAGE = Path(checkers.__file__).parent
A_DAY = date(2026, 11, 24)
OWN_SIGN = re.compile(r"f\"[≤≥] \{")


@pytest.mark.parametrize(
    ("limit", "words"),
    [
        (Limit("ms", at_most=300.0), "≤ 300 ms"),
        (Limit("ms", 130.0, 500.0), "130 ms to 500 ms"),
        (Limit("mA", 500.0, 1000.0), "500 mA to 1 A"),
        (Limit("mA", at_least=15.0), "≥ 15 mA"),
        (Limit("V", 50.0, 50.0), "50 V"),
        (Limit("mA"), ""),
    ],
)
def test_each_end_is_worded_with_its_unit(limit: Limit, words: str) -> None:
    """A reader need not guess the unit of the first figure from that of the second."""
    assert words == str(limit)


def test_two_limits_of_the_same_figures_are_one() -> None:
    """Whose they are and where they stand makes no other limit of them; the unit does."""
    row = rows_in("iec-61008-1/break-times-ac", on=A_DAY)[0]
    of_code = Limit("ms", at_most=300.0, rows=(row,), judges=Judges.INSTALLATION_CODE)

    assert Limit("ms", at_most=300.0) == of_code
    assert Limit("mA", at_most=300.0) != of_code


def test_what_asks_for_a_limit_stands_before_its_rows_and_each_once() -> None:
    """The clause of the code comes first, then the tables, none of them twice."""
    row = rows_in("iec-61008-1/break-times-ac", on=A_DAY)[0]
    clause = cite("bs-7671", "643.8", "memory")
    limit = Limit("ms", at_most=300.0, rows=(row, row), asked_by=(clause, clause))

    assert limit.sources == (clause, row.citation)


@pytest.mark.parametrize(
    ("limit", "there"),
    [(Limit("mA"), False), (Limit("mA", 0.0), True), (Limit("mA", None, 6.0), True)],
)
def test_a_limit_without_a_figure_is_none_to_meet(limit: Limit, there: bool) -> None:
    """Nothing passes by a limit that says nothing; zero is a figure."""
    assert limit.is_set is there


def test_no_other_module_words_a_limit() -> None:
    """Only rows as their table shows them, with formulas, are worded beside it."""
    found = {
        path.relative_to(PACKAGE).as_posix()
        for path in PACKAGE.rglob("*.py")
        if OWN_SIGN.search(path.read_text(encoding="utf-8"))
    }

    assert found == {"domain/limits/words.py"}
