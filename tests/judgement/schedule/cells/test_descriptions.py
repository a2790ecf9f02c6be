"""What people write of a device is taken for what it can only mean."""

from __future__ import annotations

import pytest

from checkers.judgement.schedule.cells.descriptions import describe

KNOWN = [
    # text, types, residual currents [mA], delays, form
    ("30mA A", ["A"], [30.0], [], ""),
    ("FI 0,03A / 3eN / 40A G", [], [30.0], ["G"], ""),
    ("RCBO B32 30mA type A", ["A"], [30.0], [], "rcbo"),
    ("RCBO 6A 30mA A 6kA 230V AC", ["A"], [30.0], [], "rcbo"),
    ("RCCB 63A 2P 100mA S type AC", ["AC"], [100.0], ["S"], "rccb"),
    ("FI/LS B16 0,03 A Typ A", ["A"], [30.0], [], "rcbo"),
    ("RCD 100mA [S]", [], [100.0], ["S"], ""),
    ("100 mA 60ms delay A", ["A"], [100.0], ["60 ms"], ""),
    ("RCCB 40A 30mA type B", ["B"], [30.0], [], "rccb"),
    ("30 mA B+", ["B+"], [30.0], [], ""),
    ("RCCB .03A type A", ["A"], [30.0], [], "rccb"),
    ("PRCD 10mA", [], [10.0], [], "portable"),
    ("BS EN 61009 30mA", [], [30.0], [], "rcbo"),
]


@pytest.mark.parametrize(("text", "types", "rated", "delays", "form"), KNOWN)
def test_a_description_is_understood(
    text: str, types: list[str], rated: list[float], delays: list[str], form: str
) -> None:
    """Type, residual current, delay and form are those expected, with nothing to ask."""
    found = describe(text)

    assert (types, rated, delays, form) == (found.types, found.rated, found.delays, found.form)
    assert not found.questions
    assert not found.label


@pytest.mark.parametrize(
    "text", ["RCD1", "RCD 1", "-F1", "Q2.1", "DB1 RCD 2", "RCD 12c 100mA", "7"]
)
def test_an_identifier_is_the_same_device_on_every_row(text: str) -> None:
    """A short name with a number in it is one device's own."""
    assert describe(text).label == text
    assert describe(text).is_identifier


@pytest.mark.parametrize("text", ["30", "Maker X200 RCBO 30mA", "Garage RCD", "RCBO outdoor", "F"])
def test_a_product_a_rating_or_a_place_is_no_identifier(text: str) -> None:
    """Many devices can have it in common, so a row is not taken for tested by it."""
    assert not describe(text).is_identifier


@pytest.mark.parametrize("text", ["RCD A", "RCD B", "FI AC", "RCD S"])
def test_a_letter_after_rcd_is_neither_a_type_nor_a_name(text: str) -> None:
    """It could be either."""
    found = describe(text)

    assert (found.types, found.delays, found.label) == ([], [], "")


@pytest.mark.parametrize("text", ["RCBO", "RCBO A", "30mA A", "RCBO B32 30mA type A", "FI"])
def test_a_description_names_no_device(text: str) -> None:
    """Twelve rows that say RCBO are twelve devices."""
    assert not describe(text).label


@pytest.mark.parametrize(
    "text",
    ["RCBO Type B 32A 30mA", "30mA AC/A", "30 mA / 100 mA", "100 mA 60 ms 150 ms"],
)
def test_what_could_be_two_things_is_asked(text: str) -> None:
    """B may be a tripping curve, and of two values one must be wrong."""
    assert describe(text).questions


def test_a_type_that_is_settled_is_not_asked_however_often_it_is_named() -> None:
    """A device without overcurrent protection has no curve, named once or twice."""
    found = describe("RCCB type B 30 mA (type B)")

    assert (found.types, found.questions) == (["B"], {})


@pytest.mark.parametrize("text", ["RCCB 30² mA", "RCCB 3½ mA", "RCCB 1,000 mA"])
def test_a_marked_figure_is_no_rating(text: str) -> None:
    """A raised digit is never read as a digit of the rating, nor a comma on a guess."""
    assert describe(text).rated == []


@pytest.mark.parametrize("text", ["MCB B16", "60898", "No RCD", "ohne RCD", "MCCB 100A", "Fuse"])
def test_other_protection_is_no_device(text: str) -> None:
    """A circuit-breaker or fuse alone is not judged."""
    assert describe(text).no_device


def test_b_is_a_type_only_where_no_curve_can_stand() -> None:
    """In a column of types of residual current devices it is one, in any column of types not."""
    assert describe("B", of_type=True, sure_of_b=True).types == ["B"]
    assert describe("B", of_type=True).questions
