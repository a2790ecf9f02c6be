"""What flows through each device at most before one that senses smooth DC opens."""

from __future__ import annotations

from collections.abc import Iterable

from checkers.judgement.series.arrangement import Arrangement
from checkers.judgement.series.dc.limits import limits_of
from checkers.judgement.series.dc.sources import Bounds, can_give_smooth_dc, left_by
from checkers.judgement.series.dc.through import ANYTHING, Source, Through, total


def limit_from_above(
    arrangement: Arrangement, through: list[Through], passing: list[Through]
) -> None:
    """Set what flows through each device at most before one that senses smooth DC opens."""
    devices = arrangement.devices
    for place in reversed(arrangement.shape.bottom_up):
        opens_at = limits_of(arrangement, place).opens_at
        own = ANYTHING if opens_at is None else Bounds(opens_at, opens_at)
        above = [
            through[parent].ceiling.plus(_beside(arrangement, parent, place, passing))
            for parent in devices[place].parents
            if through[parent].ceiling != ANYTHING
        ]
        bounded = above and len(above) == len(devices[place].parents)
        through[place].ceiling = own.up_to(total(above)) if bounded else own
    if any(len(one.parents) > 1 for one in devices):
        _limit_where_paths_meet(arrangement, through, passing)


def _beside(arrangement: Arrangement, parent: int, place: int, passing: list[Through]) -> Bounds:
    """Return what can reach a device from elsewhere than one below it alone."""
    code, day = arrangement.code, arrangement.day
    found: dict[Source, Bounds] = {}
    for number in arrangement.shape.loads[parent]:
        load = arrangement.loads[number]
        if can_give_smooth_dc(load):
            found["load", number] = left_by(load, code, day)
    for child in arrangement.shape.children[parent]:
        if child != place:
            found.update(passing[child].parts)
    return total(found.values())


def _limit_where_paths_meet(
    arrangement: Arrangement, through: list[Through], passing: list[Through]
) -> None:
    """Set the limits that hold where paths in parallel meet again above and below.

    Where all paths to a device pass one that senses smooth DC, that one senses all of its
    flow, with what does not come through it alone beside it. And no more flows through a
    device than through what is below it.
    """
    dominators = _dominators(arrangement)
    for place in reversed(arrangement.shape.bottom_up):
        for above in dominators[place] - {place}:
            if through[above].ceiling != ANYTHING:
                beside = total(
                    part
                    for source, part in through[above].given.items()
                    if place not in _always_through(arrangement, source, dominators)
                )
                limit = through[above].ceiling.plus(beside)
                through[place].ceiling = through[place].ceiling.up_to(limit)
    for place in arrangement.shape.bottom_up:
        through[place].sent = _from_below(arrangement, place, through, passing)


def _from_below(
    arrangement: Arrangement, place: int, through: list[Through], passing: list[Through]
) -> Bounds:
    """Return what the devices and loads right below a device can send through it."""
    if not arrangement.shape.feeds[place]:
        return ANYTHING
    own = {
        source: part
        for source, part in through[place].parts.items()
        if source[0] == "load" and source[1] in arrangement.shape.loads[place]
    }
    found = total(own.values())
    for child in arrangement.shape.children[place]:
        sent = total(passing[child].parts.values())
        as_itself = ("device", child) not in passing[child].parts
        found = found.plus(sent.up_to(through[child].added) if as_itself else sent)
    return found


def _dominators(arrangement: Arrangement) -> list[frozenset[int]]:
    """Return for each device the devices on every path from the supply to it, with itself."""
    found: list[frozenset[int]] = [frozenset()] * len(arrangement.devices)
    for place in reversed(arrangement.shape.bottom_up):
        found[place] = _on_all_paths(arrangement.devices[place].parents, found) | {place}
    return found


def _always_through(
    arrangement: Arrangement, source: Source, dominators: list[frozenset[int]]
) -> frozenset[int]:
    """Return the devices that all smooth DC of a source must flow through."""
    kind, number = source
    if kind == "device":
        return dominators[number]
    return _on_all_paths(arrangement.loads[number].parents, dominators)


def _on_all_paths(parents: Iterable[int], dominators: list[frozenset[int]]) -> frozenset[int]:
    sets = [dominators[parent] for parent in parents]
    return frozenset.intersection(*sets) if sets else frozenset()
