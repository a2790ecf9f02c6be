"""A rounded figure never looks better than the figure it came from."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.judgement.limits.safe_rounding import rounded, rounded_down, rounded_up

FIGURES = st.floats(min_value=0.01, max_value=1e6)


@given(FIGURES)
def test_a_burden_is_never_shown_smaller_and_a_limit_never_larger(value: float) -> None:
    """Rounding goes to the safe side, whatever the figure."""
    assert rounded_up(value) >= value - 1e-9
    assert rounded_down(value) <= value + 1e-9


@given(FIGURES)
def test_rounding_stays_within_its_digits(value: float) -> None:
    """Up keeps four digits, down keeps whole numbers or two digits."""
    assert rounded_up(value) - value <= max(value / 1000, 1)
    assert value - rounded_down(value) <= max(value / 10, 1e-9) + 1e-9


@pytest.mark.parametrize(
    ("value", "up", "down"),
    [(50 / 0.03, 1667, 1666), (50 / 0.3, 166.7, 166), (6.6, 6.6, 6.6), (0.1 + 0.2, 0.3, 0.3)],
)
def test_binary_remainders_do_not_move_a_figure(value: float, up: float, down: float) -> None:
    """6.6 stays 6.6, and a third is cut or lifted."""
    assert (up, down) == (rounded_up(value), rounded_down(value))


def test_a_figure_without_a_safe_side_goes_to_the_nearest() -> None:
    """A slope is neither limit nor burden."""
    assert rounded(39.886) == 39.89
    assert rounded(-0.123449) == -0.1234
