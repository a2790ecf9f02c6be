"""Multiples of the rating are read as people write them."""

from __future__ import annotations

import pytest

from checkers.domain.quantities.multiples import parse_multiple
from checkers.domain.quantities.typed_numbers import NotAQuantity


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("½", 0.5),
        ("0.5", 0.5),
        ("0,5", 0.5),
        ("1/2", 0.5),
        ("half", 0.5),
        ("x1", 1),
        ("1x", 1),
        ("×1", 1),
        ("5 x", 5),
        ("x5", 5),
        ("5", 5),
        ("1.4", 1.4),
        ("5 x IΔn", 5),
        ("5 I∆n", 5),
    ],
)
def test_a_multiple_is_read_in_every_notation(typed: str, value: float) -> None:
    """Fractions, commas and the times sign before or after do not change a multiple."""
    assert value == parse_multiple(typed)


@pytest.mark.parametrize(
    "typed", ["", "x", "0", "1/0", "-1", "nan", "inf", "5 ms", "1e3", "100000"]
)
def test_what_is_no_multiple_is_refused(typed: str) -> None:
    """Nothing without a believable figure becomes a multiple."""
    with pytest.raises(NotAQuantity):
        parse_multiple(typed)
