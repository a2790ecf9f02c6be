"""No cell of an output runs as a formula, and figures stay figures."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.judgement.schedule.output.formula_guard import harmless

# The payloads are those of OWASP's page on CSV injection, and variants that hide their first
# character behind spaces, other widths or another delimiter.
RUN = [
    "=1+1",
    "=cmd|' /C calc'!A0",
    "+1+1",
    "-2+3+cmd|' /C calc'!A0",
    "@SUM(1+1)*cmd|' /C calc'!A0",
    "\t=1+1",
    "\r=1+1",
    "\n=1+1",
    " =1+1",
    "\u00a0=1+1",
    "\u200b=1+1",
    "＝1+1",
    "＋1+1",
    "－1+cmd",
    "＠SUM(A1)",
    "\ttext",
    "- retest",
    "-x",
    "+A1",
]
STAY = [
    "",
    "-",
    "--",
    "—",
    "-5",
    "-0,5",
    "+3 mA",
    " - ",
    "-12.5 °C",
    "28,5/18",
    "> 300",
    "a=b",
    "x",
]


@pytest.mark.parametrize("cell", RUN)
def test_a_cell_that_would_run_is_made_text(cell: str) -> None:
    """An apostrophe stands before it, and nothing of it is lost."""
    assert harmless(cell).startswith("'")
    assert harmless(cell).replace("'", "").endswith(cell.replace("'", "")[-3:])


@pytest.mark.parametrize("cell", STAY)
def test_a_cell_that_does_not_run_stays(cell: str) -> None:
    """Negative figures, dashes and readings are left as they are."""
    assert harmless(cell) == cell


SPLIT = ["a,=1+1", "a;@SUM(A1)", "a\t=1", "a|＝1", "a\n=1", "a,-cmd|'x'!A0", "a; +A1"]


@pytest.mark.parametrize("cell", SPLIT)
def test_a_part_that_another_delimiter_would_split_off_is_made_text(cell: str) -> None:
    """Whoever opens the file with another delimiter runs nothing either."""
    assert harmless(cell)[2:].lstrip().startswith("'")


@given(st.text(st.sampled_from("=+-@＝＠\t\r\n ,;'1aA.")))
@settings(deadline=None)
def test_nothing_is_left_that_begins_with_what_runs(cell: str) -> None:
    """Beyond spaces, only a figure or dashes begin with a sign."""
    bare = harmless(cell).strip()

    assert not bare.startswith(("=", "@", "＝", "＠"))
    if bare.startswith(("+", "-")):
        assert not set(bare) - set("+-0123456789., Aa\n\t\r")
