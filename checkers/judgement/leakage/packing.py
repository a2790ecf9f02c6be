"""Items put onto as few devices as can be, each within its budget of standing leakage."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from checkers.judgement.leakage.packing_bounds import groups_by_total, least_groups
from checkers.judgement.leakage.parts import NO_LEAKAGE, Leakage, how_many_fit

MOST_STEPS = 3000

Counts = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Kind:
    """A number of items alike, each with the same leakage."""

    each: Leakage
    count: int


@dataclass(frozen=True, slots=True)
class Packing:
    """How many of each kind every group holds, and how few groups could do at all.

    `least` is proven: fewer groups cannot hold the items. Where it equals the number of
    groups, the packing is the best there is.
    """

    groups: tuple[Counts, ...]
    least: int

    @property
    def is_best(self) -> bool:
        """Whether no packing with fewer groups exists."""
        return len(self.groups) == self.least


def pack(kinds: Sequence[Kind], budget: float) -> Packing:
    """Put items into as few groups as can be found, each within a budget [mA].

    Inputs: the kinds, each item of which fits by itself; the budget of every group [mA].
    Result: a Packing. Few items are packed with the fewest groups there can be; for many, the
    search stops after MOST_STEPS and `least` says how much better it could still be.
    Raises ValueError for an item above the budget.
    Assumption: an item added never lowers a group's total.
    """
    if not all(kind.each.fits(budget) for kind in kinds):
        raise ValueError("an item is above the budget by itself")
    order = sorted(range(len(kinds)), key=lambda one: -kinds[one].each.total)
    found = _Search(tuple(kinds[one] for one in order), budget).best()
    place = {kind: position for position, kind in enumerate(order)}
    groups = tuple(tuple(group[place[one]] for one in range(len(kinds))) for group in found.groups)
    return Packing(groups, found.least)


def total_of(kinds: Sequence[Kind], counts: Sequence[int]) -> Leakage:
    """Return the leakage of some of each kind."""
    total = NO_LEAKAGE
    for kind, count in zip(kinds, counts, strict=True):
        total += kind.each.times(count)
    return total


def is_sound(packing: Packing, kinds: Sequence[Kind], budget: float) -> bool:
    """Tell whether every item is in exactly one group and every group within the budget [mA]."""
    placed = [sum(column) for column in zip(*packing.groups, strict=True)]
    fits = all(total_of(kinds, group).fits(budget) for group in packing.groups)
    return fits and placed == [kind.count for kind in kinds]


class _Search:
    """The search for the fewest groups, over kinds sorted from the largest item down."""

    def __init__(self, kinds: tuple[Kind, ...], budget: float) -> None:
        self.kinds = kinds
        self.budget = budget
        self.steps = 0
        self.hopeless: dict[Counts, int] = {}

    @property
    def is_over(self) -> bool:
        """Whether the search has used its steps, so that what it did not find proves nothing."""
        return self.steps >= MOST_STEPS

    def best(self) -> Packing:
        """Return the packing: the largest first, then whatever the search improves on it."""
        counts = tuple(kind.count for kind in self.kinds)
        first = self._largest_first(counts)
        least = least_groups([(kind.each, kind.count) for kind in self.kinds], self.budget)
        for groups in range(least, len(first)):
            found = self._into(counts, groups)
            if found is not None:
                return Packing(found, groups)
            if self.is_over:
                return Packing(first, groups)
        return Packing(first, len(first))

    def _largest_first(self, counts: Counts) -> tuple[Counts, ...]:
        """Fill group after group, the largest items first, with whatever still fits."""
        groups = []
        while any(counts):
            group = self._filled(counts)
            groups.append(group)
            counts = _less(counts, group)
        return tuple(groups)

    def _filled(self, counts: Counts) -> Counts:
        taken, total = [], NO_LEAKAGE
        for kind, count in zip(self.kinds, counts, strict=True):
            number = how_many_fit(total, kind.each, self.budget, count)
            taken.append(number)
            total += kind.each.times(number)
        return tuple(taken)

    def _into(self, counts: Counts, groups: int) -> tuple[Counts, ...] | None:
        """Return a packing into so many groups, or None where there is none or no time."""
        if not any(counts):
            return ()
        if (
            groups_by_total(total_of(self.kinds, counts), self.budget) > groups
            or self.hopeless.get(counts, 0) >= groups
        ):
            return None
        for group in self._full_groups(counts):
            rest = self._into(_less(counts, group), groups - 1)
            if rest is not None:
                return (group, *rest)
        if not self.is_over:
            self.hopeless[counts] = groups
        return None

    def _full_groups(self, counts: Counts) -> Iterator[Counts]:
        """Yield each group that holds the largest item left and has room for no other.

        A packing that leaves room in that group can be turned into one that does not, so
        none is missed.
        """
        largest = next(place for place, count in enumerate(counts) if count)
        for later in self._groups(counts, largest, NO_LEAKAGE, at_least=1):
            group = (*(0 for _ in range(largest)), *later)
            if self._is_full(_less(counts, group), total_of(self.kinds, group)):
                yield group

    def _groups(
        self, counts: Counts, place: int, total: Leakage, at_least: int = 0
    ) -> Iterator[Counts]:
        """Yield the groups that take their items from the kinds at a place and after it."""
        self.steps += 1
        if self.is_over:
            return
        if place == len(counts):
            yield ()
            return
        kind = self.kinds[place]
        most = how_many_fit(total, kind.each, self.budget, counts[place])
        for number in range(most, at_least - 1, -1):
            for later in self._groups(counts, place + 1, total + kind.each.times(number)):
                yield (number, *later)

    def _is_full(self, left: Counts, total: Leakage) -> bool:
        kinds = zip(self.kinds, left, strict=True)
        return not any(count and (total + kind.each).fits(self.budget) for kind, count in kinds)


def _less(counts: Counts, group: Counts) -> Counts:
    return tuple(count - taken for count, taken in zip(counts, group, strict=True))
