"""How many more items a device may carry, and over how few devices to split what it carries."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from checkers.judgement.leakage.packing import Kind, Packing, is_sound, pack, total_of
from checkers.judgement.leakage.parts import NO_LEAKAGE, Leakage, how_many_fit, leakage_of
from checkers.judgement.leakage.standing_leakage import ListedItem, StandingLeakage

MOST_TO_COUNT = 10_000
MOST_TO_SPLIT = 500


@dataclass(frozen=True, slots=True)
class Room:
    """How many of an item fit on a device alone, and how many more beside what it carries."""

    item: ListedItem
    alone: int
    more: int


@dataclass(frozen=True, slots=True)
class Split:
    """The items split over devices; `too_large` are those above the budget by themselves."""

    items: tuple[ListedItem, ...]
    packing: Packing
    too_large: tuple[ListedItem, ...]

    def total(self, group: Sequence[int]) -> Leakage:
        """Return the leakage of one group."""
        return total_of(_kinds(self.items), group)


def room_for(leakage: StandingLeakage, limit: float) -> list[Room]:
    """Return, for each item with a leakage, how many fit within a limit [mA]."""
    carried = carried_by(leakage)
    return [
        Room(
            item,
            how_many_fit(NO_LEAKAGE, item.each, limit, MOST_TO_COUNT),
            how_many_fit(carried, item.each, limit, MOST_TO_COUNT),
        )
        for item in leakage.items
        if item.each.total > 0
    ]


def carried_by(leakage: StandingLeakage) -> Leakage:
    """Return what the device carries: what was measured, or else the most that is worked out.

    What is worked out is that of the worst combination. On one line it keeps its parts, so that
    what is added is added at its angle.
    """
    if leakage.measured is not None:
        return leakage_of(leakage.measured, "unknown")
    if not leakage.is_on_one_line:
        return leakage_of(leakage.at_most, "unknown")
    parts = [item.each.times(item.count) for item in leakage.items]
    return sum(parts, start=leakage.through_insulation)


def split(leakage: StandingLeakage, limit: float) -> Split | None:
    """Return the items split over devices of one kind, or None where there is nothing to split.

    Inputs: the leakage; the budget of each device [mA].
    Assumptions: what flows through the insulation goes with no item, and is left out; all
    items of a device are on one line, which is the worst that can be.
    """
    items = tuple(one for one in leakage.items if one.each.fits(limit))
    too_large = tuple(one for one in leakage.items if not one.each.fits(limit))
    count = sum(one.count for one in items)
    if not items or count > MOST_TO_SPLIT:
        return None
    packing = pack(_kinds(items), limit)
    if not is_sound(packing, _kinds(items), limit):
        raise AssertionError("the packing does not hold what it should")
    return Split(items, packing, too_large)


def _kinds(items: Sequence[ListedItem]) -> list[Kind]:
    return [Kind(one.each, one.count) for one in items]
