"""Cells give the readings that stand in them, or say why they do not."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.judgement.schedule.cells.cell_words import names_a_spare, unwrapped
from checkers.judgement.schedule.cells.cells import read_cell
from checkers.judgement.schedule.headings.headings import meaning_of

ReadingWords = list[tuple[str, str, str, str]]
READ: list[tuple[str, str, ReadingWords]] = [
    ("x1 (ms)", "28.5", [("trip-time", "1", "", "28.5 ms")]),
    ("x1", "28,5 ms", [("trip-time", "1", "", "28,5 ms")]),
    (
        "x1 0°/180°",
        "28,5/18,3 ms",
        [("trip-time", "1", "0", "28,5 ms"), ("trip-time", "1", "180", "18,3 ms")],
    ),
    ("x1/x5", "38.2/18.8", [("trip-time", "1", "", "38.2"), ("trip-time", "5", "", "18.8")]),
    ("x5/x1", "18.8 & 38.2", [("trip-time", "5", "", "18.8"), ("trip-time", "1", "", "38.2")]),
    ("x1 0/180", "28\n18", [("trip-time", "1", "0", "28"), ("trip-time", "1", "180", "18")]),
    (
        "RCD test",
        "x1: 28 ms, x5: 12 ms",
        [("trip-time", "1", "", "28 ms"), ("trip-time", "5", "", "12 ms")],
    ),
    (
        "RCD test",
        "5x 12ms 1x 28ms",  # read also without marks between, and never shown so
        [("trip-time", "5", "", "12ms"), ("trip-time", "1", "", "28ms")],
    ),
    (
        "RCD test",
        "28 ms ×1, 12 ms ×5",
        [("trip-time", "1", "", "28 ms"), ("trip-time", "5", "", "12 ms")],
    ),
    (
        "RCD test",
        "½ >1999 ramp 22 mA",
        [("no-trip", "0.5", "", ">1999"), ("ramp", "", "", "22 ma")],
    ),
    ("x1", "0° 28 180° 18", [("trip-time", "1", "0", "28"), ("trip-time", "1", "180", "18")]),
    ("Result", "33ms", [("trip-time", "", "", "33ms")]),
    ("Result", ">300 ms", [("unknown", "", "", ">300 ms")]),
    ("½", "n/t", [("no-trip", "0.5", "", "n/t")]),
    ("x1 0°/180°", "28/-", [("trip-time", "1", "0", "28")]),
    ("x1/x5", "28", [("trip-time", "", "", "28")]),
    ("x1", "keine Auslösung", [("trip-time", "1", "", "no trip")]),
    ("x1", "28 ms ✓", [("trip-time", "1", "", "28 ms")]),
    ("x1 (s)", ".4", [("trip-time", "1", "", ".4 s")]),
    ("x1 (s)", "4.", [("trip-time", "1", "", "4 s")]),
    ("x1 (s)", "less than 4", [("trip-time", "1", "", "less than 4 s")]),
    ("x1 (s)", "> ,4", [("trip-time", "1", "", "> ,4 s")]),
    ("Ramp (ms)", "22.", [("ramp", "", "", "22 ms")]),
    ("Ramp (mA)", "no trip by 30", [("ramp", "", "", "no trip by 30 mA")]),
    (
        "RCD test",
        "x1: .4 s, x5: 12 ms",
        [("trip-time", "1", "", ".4 s"), ("trip-time", "5", "", "12 ms")],
    ),
    ("Button", "n.i.O.", [("button", "", "", "does not operate")]),
]
NOT_READ = [
    ("x1/x5 0°/180°", "28/18"),
    ("x1/x5 0°/180°", "28/18/12/11"),
    ("x1", "5x 28"),
    ("Ramp", "5x 28"),
    ("x1 0°", "180° 28"),
    ("RCD test", "1x28.5"),
    ("RCD test", "5 x1"),
    ("RCD test", "1 x 5"),
    ("x1", "28*"),
    ("x1", "28²"),
    ("x1 (s)", ".02¹"),
    ("x1", "1..5"),
    ("RCD test", "x1: 28² ms, x5: 12 ms"),
    ("x1", "about 28"),
    ("Button", "28"),
]


@pytest.mark.parametrize(("heading", "cell", "expected"), READ)
def test_a_cell_is_read(heading: str, cell: str, expected: ReadingWords) -> None:
    """Test, multiple, start phase and value are those expected, in order."""
    read = read_cell(cell, meaning_of(heading), "ac")

    found = [
        (one["test"], one.get("multiple", ""), one.get("phase", ""), one["value"])
        for one in read.readings
    ]
    assert expected == found
    assert not read.problems


@pytest.mark.parametrize(("heading", "cell"), NOT_READ)
def test_a_cell_that_could_be_misread_gives_no_figure(heading: str, cell: str) -> None:
    """It has a problem in words, and no reading."""
    read = read_cell(cell, meaning_of(heading), "ac")

    assert read.problems
    assert not read.readings


@pytest.mark.parametrize("cell", ["", "-", "--", "n/a", "N/A", "–", "not tested", "nicht geprüft"])
def test_a_cell_that_says_nothing_gives_nothing(cell: str) -> None:
    """Neither a reading nor a problem comes of it."""
    read = read_cell(cell, meaning_of("x1"), "ac")

    assert (read.readings, read.problems) == ((), ())


@given(st.text(max_size=40), st.sampled_from(["x1 (ms)", "x1/x5", "RCD test", "Ramp", "Button"]))
@settings(deadline=None)
def test_no_cell_is_too_strange(cell: str, heading: str) -> None:
    """Whatever stands there is read, left out or named as a problem, without an error."""
    read_cell(unwrapped(cell), meaning_of(heading), "ac")


@given(
    first=st.decimals(6, 290, places=1),
    second=st.decimals(6, 39, places=1),
    between=st.sampled_from([" ", ", ", "; ", " / ", "\n"]),
    label=st.sampled_from(["{n}x {v}", "x{n} {v}", "x{n}: {v}ms", "{v} ms x{n}", "{n} x IΔn {v}"]),
    turned=st.booleans(),
)
@settings(deadline=None)
def test_labelled_figures_are_told_apart_in_any_order(
    first: object, second: object, between: str, label: str, *, turned: bool
) -> None:
    """Each figure goes with its own label, whichever comes first."""
    pair = [label.format(n=1, v=first), label.format(n=5, v=second)]
    cell = between.join(reversed(pair) if turned else pair)

    read = read_cell(cell, meaning_of("RCD test"), "ac")

    found = {one["multiple"]: one["value"].removesuffix("ms").strip() for one in read.readings}
    assert found == {"1": str(first), "5": str(second)}


@pytest.mark.parametrize("cell", ["spare", "SPARE WAY", "Way 4 (spare)", "Reserve", "réserve 3"])
def test_a_spare_way_is_known(cell: str) -> None:
    """Short words that say so are enough."""
    assert names_a_spare(cell)


@pytest.mark.parametrize("cell", ["", "Sockets", "Socket for the spare freezer in the cellar"])
def test_a_circuit_is_no_spare_way(cell: str) -> None:
    """A description that happens to hold the word is none."""
    assert not names_a_spare(cell)
