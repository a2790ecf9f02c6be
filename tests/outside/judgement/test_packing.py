"""The split over devices agrees with SciPy's integer programming."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp

from checkers.judgement.leakage.packing import Kind, pack
from checkers.judgement.leakage.parts import Leakage

BUDGET = 9.0
LISTS = [
    [0.75] * 13,
    [3.5, 3.5, 3.5, 0.75, 0.75, 0.75, 0.75],
    [4.0, 4.0, 3.0, 3.0, 2.0, 2.0],
    [5.0, 4.6, 4.4, 4.0, 2.5, 2.0, 1.5, 1.0],
    [8.9, 6.1, 5.7, 3.3, 2.9, 0.5, 0.1, 0.1],
    [4.51, 4.51, 4.49, 4.49, 0.02, 0.02],
]


def fewest_by_programming(sizes: list[float]) -> int:
    """Return the fewest groups: x[i, g] puts item i into group g, y[g] opens group g."""
    count = len(sizes)
    cost = np.concatenate([np.zeros(count * count), np.ones(count)])
    once = np.zeros((count, cost.size))
    within = np.zeros((count, cost.size))
    for one in range(count):
        once[one, one * count : (one + 1) * count] = 1
        within[one, one : count * count : count] = sizes
        within[one, count * count + one] = -BUDGET
    found = milp(
        cost,
        constraints=[LinearConstraint(once, 1, 1), LinearConstraint(within, -np.inf, 1e-9)],
        integrality=np.ones(cost.size),
        bounds=Bounds(0, 1),
    )
    fewest: int = round(found.fun)
    return fewest


@pytest.mark.parametrize("sizes", LISTS, ids=str)
def test_the_fewest_devices_are_those_of_integer_programming(sizes: list[float]) -> None:
    """The same number, and known to be the best."""
    packing = pack([Kind(Leakage(unknown=one), 1) for one in sizes], BUDGET)

    assert packing.is_best
    assert fewest_by_programming(sizes) == len(packing.groups)
