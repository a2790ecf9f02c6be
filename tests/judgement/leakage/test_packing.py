"""Items are put onto as few devices as can be, and a bound says how few that is."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.judgement.leakage.packing import Kind, Packing, is_sound, pack
from checkers.judgement.leakage.parts import NO_LEAKAGE, Leakage

BUDGET = 9.0
CURRENTS = st.floats(min_value=0.1, max_value=9.0).map(lambda one: round(one, 2))
LEAKAGES = st.one_of(
    CURRENTS.map(lambda one: Leakage(capacitive=one)),
    CURRENTS.map(lambda one: Leakage(resistive=one)),
    CURRENTS.map(lambda one: Leakage(unknown=one)),
)


def kinds_of(*leakages: Leakage) -> list[Kind]:
    """Return each leakage as a kind of one item."""
    return [Kind(each, 1) for each in leakages]


def ways(items: list[Leakage], groups: tuple[Leakage, ...] = ()) -> Iterator[int]:
    """Yield the number of groups of every way to put items into groups within the budget."""
    if not items:
        yield len(groups)
        return
    for place, total in enumerate(groups):
        if (total + items[0]).fits(BUDGET):
            yield from ways(items[1:], (*groups[:place], total + items[0], *groups[place + 1 :]))
    yield from ways(items[1:], (*groups, items[0]))


@settings(deadline=None, max_examples=60)
@given(st.lists(LEAKAGES, min_size=1, max_size=7))
def test_few_items_are_packed_as_well_as_trying_every_way(items: list[Leakage]) -> None:
    """No way of grouping seven items needs fewer devices."""
    packing = pack(kinds_of(*items), BUDGET)

    assert packing.is_best
    assert min(ways(items)) == len(packing.groups)


@settings(deadline=None, max_examples=60)
@given(st.lists(st.tuples(LEAKAGES, st.integers(1, 30)), min_size=1, max_size=12))
def test_every_packing_holds_each_item_once_within_the_budget(
    items: list[tuple[Leakage, int]],
) -> None:
    """Nothing is lost, nothing is over, and the bound is never above what was found."""
    kinds = [Kind(*one) for one in items]
    packing = pack(kinds, BUDGET)

    assert is_sound(packing, kinds, BUDGET)
    assert 1 <= packing.least <= len(packing.groups)


def test_largest_first_alone_would_need_one_device_more() -> None:
    """4 + 4 leaves room for nothing else; 4 + 3 + 2, twice, fills two devices."""
    sizes = [4.0, 4.0, 3.0, 3.0, 2.0, 2.0]
    packing = pack(kinds_of(*(Leakage(unknown=one) for one in sizes)), BUDGET)

    assert packing.is_best
    assert len(packing.groups) == 2


def test_currents_at_right_angles_share_a_device_that_their_sum_would_fill() -> None:
    """7 mA capacitive and 5 mA resistive make 8.6 mA, and 7 and 5 mA of one kind make 12 mA."""
    assert len(pack(kinds_of(Leakage(7.0), Leakage(resistive=5.0)), BUDGET).groups) == 1
    assert len(pack(kinds_of(Leakage(7.0), Leakage(5.0)), BUDGET).groups) == 2


def test_an_item_above_the_budget_is_refused() -> None:
    """It needs another device, not another place."""
    with pytest.raises(ValueError, match="above the budget"):
        pack([Kind(Leakage(unknown=9.1), 1)], BUDGET)


TWO_AND_EIGHT = [Kind(Leakage(unknown=2.0), 1), Kind(Leakage(unknown=8.0), 1)]


@pytest.mark.parametrize(
    "groups", [((2, 0), (0, 1)), ((0, 0), (0, 1)), ((1, 1),)], ids=["twice", "missing", "over"]
)
def test_a_wrong_packing_is_seen(groups: tuple[tuple[int, ...], ...]) -> None:
    """An item placed twice, an item left out, a group over its budget."""
    assert not is_sound(Packing(groups, least=1), TWO_AND_EIGHT, BUDGET)
    assert is_sound(Packing(((1, 0), (0, 1)), least=2), TWO_AND_EIGHT, BUDGET)


def test_nothing_adds_nothing() -> None:
    """No leakage has no total."""
    assert NO_LEAKAGE.total == 0
