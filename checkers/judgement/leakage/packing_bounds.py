"""How few groups could hold some items at all: bounds that no packing can beat.

Source: [1] S. Martello, P. Toth, Knapsack Problems (1990), 8.3, bound L2 for bin packing
(from memory); for phasors each current is first projected onto one direction, which can only
make the total of a group smaller.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, ceil, cos, pi, sin

from checkers.judgement.leakage.parts import NOISE, Leakage

Sizes = Sequence[tuple[float, int]]


def least_groups(items: Sequence[tuple[Leakage, int]], budget: float) -> int:
    """Return a number of groups below which no packing exists.

    Inputs: leakages [mA] with how often each occurs; the budget of a group [mA].
    """
    total = sum((each.times(count) for each, count in items), Leakage())
    angles = {0.0, pi / 4, pi / 2, atan2(total.resistive, total.capacitive)}
    return max(_second_bound(_projected(items, angle), budget) for angle in angles)


def groups_by_total(total: Leakage, budget: float) -> int:
    """Return the groups that a total [mA] alone needs, which is the quicker, weaker bound."""
    return max(1, ceil(total.total / budget - NOISE))


def _projected(items: Sequence[tuple[Leakage, int]], angle: float) -> Sizes:
    along = cos(angle), sin(angle)
    return [
        (along[0] * each.capacitive + along[1] * each.resistive + each.unknown, count)
        for each, count in items
    ]


def _second_bound(sizes: Sizes, budget: float) -> int:
    """Return the bound L2: the best over all sizes that may count as small."""
    thresholds = {0.0} | {size for size, _ in sizes if size <= budget / 2}
    return max(1, *(_with_small(sizes, budget, small) for small in thresholds))


def _with_small(sizes: Sizes, budget: float, small: float) -> int:
    """Return the groups needed, counting no item below `small`.

    An item too large to share with a small one has a group alone; so has each of more than
    half the budget; the rest go into the room left by these, and into groups of their own.
    """
    large = [(size, count) for size, count in sizes if size > budget / 2 + NOISE]
    sharing = [(size, count) for size, count in large if size + small <= budget + NOISE]
    rest = [(size, count) for size, count in sizes if small <= size <= budget / 2 + NOISE]
    room = sum(count for _, count in sharing) * budget - _sum(sharing)
    return sum(count for _, count in large) + max(0, ceil((_sum(rest) - room) / budget - NOISE))


def _sum(sizes: Sizes) -> float:
    return sum(size * count for size, count in sizes)
