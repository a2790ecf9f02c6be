"""A quantity is written in the unit that people use for its size."""

from __future__ import annotations

import pytest

from checkers.domain.quantities.quantity import format_quantity


@pytest.mark.parametrize(
    ("value", "unit", "shown"),
    [
        (999, "mA", "999 mA"),
        (1000, "mA", "1 A"),
        (5000, "mA", "5 A"),
        (1500, "mA", "1.5 A"),
        (300, "ms", "300 ms"),
        (10000, "ms", "10 s"),
        (3000, "ohm", "3000 ohm"),
    ],
)
def test_amperes_begin_at_one_ampere(value: float, unit: str, shown: str) -> None:
    """Common practice: 30 mA and 5 A, and never 5000 mA beside 5 A."""
    assert shown == format_quantity(value, unit)
