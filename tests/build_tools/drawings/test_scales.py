"""A scale puts values in their place and marks round ones."""

from __future__ import annotations

import pytest

from build_tools.drawings.scales import Scale, figure


def test_an_even_scale() -> None:
    """The ends map on the ends, the middle on the middle, upside down too."""
    scale = Scale(0.0, 300.0, 200.0, 20.0)

    assert [scale.at(value) for value in (0.0, 150.0, 300.0)] == [200.0, 110.0, 20.0]


def test_a_scale_by_powers() -> None:
    """Each factor of ten takes the same room."""
    scale = Scale(1.0, 1000.0, 0.0, 300.0, by_powers=True)

    assert pytest.approx([scale.at(10.0**n) for n in range(4)]) == [0.0, 100.0, 200.0, 300.0]


def test_a_value_beyond_lies_at_the_end() -> None:
    """Nothing is drawn outside."""
    assert Scale(0.0, 10.0, 0.0, 100.0).at(12.0) == 100.0


@pytest.mark.parametrize(
    ("low", "high", "marks"),
    [
        (0.0, 300.0, [0.0, 50.0, 100.0, 150.0, 200.0, 250.0, 300.0]),
        (-350.0, 350.0, [-200.0, 0.0, 200.0]),
        (0.0, 0.9, [0.0, 0.2, 0.4, 0.6, 0.8]),
    ],
)
def test_marks_are_round(low: float, high: float, marks: list[float]) -> None:
    """Ones, twos and fives, and not too many."""
    assert marks == Scale(low, high, 0.0, 1.0).marks()


def test_powers_of_ten_are_marked() -> None:
    """On a scale by powers each whole power is marked."""
    assert Scale(7.0, 2000.0, 0.0, 1.0, by_powers=True).marks() == [10.0, 100.0, 1000.0]


def test_a_negative_figure_has_a_minus_sign() -> None:
    """Not a hyphen, which is too short to be seen on an axis."""
    assert figure(-200.0) == "−200"
