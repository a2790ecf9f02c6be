"""How few devices could do at all: bounds worked by hand."""

from __future__ import annotations

import pytest

from checkers.judgement.leakage.packing_bounds import least_groups
from checkers.judgement.leakage.parts import Leakage

BUDGET = 9.0


@pytest.mark.parametrize(
    ("items", "least"),
    [
        # 30 and 30 mA at right angles are 42.4 mA: 4.7 budgets, and 3.3 by either alone.
        ([(Leakage(3.0), 10), (Leakage(resistive=3.0), 10)], 5),
        # 26 and 10 mA are 27.9 mA: just over three budgets, along their own direction only.
        ([(Leakage(2.0), 13), (Leakage(resistive=1.0), 10)], 4),
        # An unknown phase may be any, so it counts whole: 30 + 30 mA are 6.7 budgets.
        ([(Leakage(3.0), 10), (Leakage(unknown=3.0), 10)], 7),
    ],
)
def test_phasors_need_what_they_come_to_in_one_direction(
    items: list[tuple[Leakage, int]], least: int
) -> None:
    """By Pythagoras, divided by the budget and rounded up."""
    assert least_groups(items, BUDGET) == least


@pytest.mark.parametrize(
    ("sizes", "least"),
    [
        ([6.0, 6.0, 6.0, 4.0, 4.0], 4),  # 26 mA in all: three budgets, but 6 + 4 exceeds one
        ([5.0, 5.0, 5.0, 4.5, 4.5], 4),  # the small ones fill a fourth together
        ([5.0, 5.0, 5.0, 4.0, 4.0], 3),  # 5 + 4 is the budget
        ([3.0], 1),
    ],
)
def test_what_cannot_share_with_the_small_stands_alone(sizes: list[float], least: int) -> None:
    """The bound L2 of Martello and Toth, Knapsack Problems, 8.3 (from memory)."""
    assert least_groups([(Leakage(unknown=one), 1) for one in sizes], BUDGET) == least
