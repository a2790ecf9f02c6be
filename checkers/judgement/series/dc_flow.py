"""The greatest smooth DC that can flow through each device of an arrangement unseen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from math import inf

from checkers.domain.devices import DeviceType, Form
from checkers.judgement.promised_dc import promised_by
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.dc_limits import DCLimits, dc_limits
from checkers.judgement.series.dc_sources import (
    NOTHING,
    Bounds,
    calls_for_type_f,
    can_give_smooth_dc,
    left_by,
)

Source = tuple[str, int]
"""What smooth DC comes from: ("load" or "device", its place)."""

Parts = Mapping[Source, Bounds]
ANYTHING = Bounds(inf, inf)


@dataclass(slots=True)
class Through:
    """Smooth DC [mA] through one device: what adds up, by source, and what is a remark.

    `given` are the sources below as they are without any detection between; `ordinary` is the
    most that any one piece of ordinary electronics below may leave, which is not added to the
    rest; `type_b_below` tells whether a type B stands below the device; `ceiling` is what the
    devices that sense smooth DC, above and at its place, let pass at most before they open,
    `sent` what those right below let through.
    """

    parts: dict[Source, Bounds] = field(default_factory=dict)
    given: dict[Source, Bounds] = field(default_factory=dict)
    ordinary: float = 0.0
    type_b_below: bool = False
    ceiling: Bounds = ANYTHING
    sent: Bounds = ANYTHING

    @property
    def added(self) -> Bounds:
        """What adds up, in the worst case: no more than is given, however the paths divide."""
        most = total(self.parts.values()).up_to(total(self.given.values()))
        return most.up_to(self.sent).up_to(self.ceiling)

    @property
    def bounds(self) -> Bounds:
        """What decides, in the worst case."""
        low, high = self.added
        return Bounds(max(low, self.ordinary), max(high, self.ordinary)).up_to(self.ceiling)

    @property
    def with_ordinary(self) -> float | None:
        """What one piece of ordinary electronics beside the rest would make of it [mA], if any."""
        beside = self.ordinary if self.added.high else 0.0
        return min(self.added.high + beside, self.ceiling.high) if beside else None


def total(parts: Iterable[Bounds]) -> Bounds:
    """Return several flows of smooth DC together, in the worst case."""
    found = NOTHING
    for part in parts:
        found = found.plus(part)
    return found


def flow_through(arrangement: Arrangement) -> list[Through]:
    """Return what can flow through each device, by its place.

    Assumptions: what several sources leave adds up. A device that senses smooth DC lets no
    more pass than the current at which it opens at the latest; every other lets all pass. It
    senses the sum, so that sources of opposite sign hide each other: below it, a branch is
    kept to that current and what the others can leave. Of paths in parallel, each may carry
    all or a part, and together they carry no more than each lets pass. A type B counts with
    all it lets pass, and a type F that equipment calls for with what it bears, whatever they
    feed.

    Source: [1] IEC 60364-5-53:2019, 531.3.3.
    """
    passing: list[Through] = [Through()] * len(arrangement.devices)
    through = list(passing)
    for place in arrangement.shape.bottom_up:
        through[place] = _gathered(arrangement, place, passing)
        passing[place] = _passed_on(arrangement, place, through[place])
    _limit_from_above(arrangement, through, passing)
    return through


def _gathered(arrangement: Arrangement, place: int, passing: list[Through]) -> Through:
    found = Through()
    for number in arrangement.shape.loads[place]:
        load = arrangement.loads[number]
        bounds = left_by(load, arrangement.code, arrangement.day)
        if not can_give_smooth_dc(load):
            found.ordinary = max(found.ordinary, bounds.high)
        elif bounds != NOTHING:
            found.parts["load", number] = bounds
        found.type_b_below |= load.protection == DCProtection.TYPE_B
    found.given = dict(found.parts)
    for child in arrangement.shape.children[place]:
        below = passing[child]
        found.parts.update(below.parts)
        found.given.update(below.given)
        found.ordinary = max(found.ordinary, below.ordinary)
        found.type_b_below |= below.type_b_below
    if not arrangement.shape.feeds[place] and _limits(arrangement, place).senses:
        found.parts["device", place] = found.given["device", place] = ANYTHING
    return found


def _passed_on(arrangement: Arrangement, place: int, through: Through) -> Through:
    """Return what a device lets pass to those above it."""
    limits, device = _limits(arrangement, place), arrangement.devices[place]
    own: Source = ("device", place)
    if limits.senses:
        opens_at = inf if limits.opens_at is None else limits.opens_at
        if device.is_rcd:
            whole = {own: Bounds(opens_at, opens_at)}
            return Through(parts=whole, given=dict(whole), type_b_below=True)
        ordinary = Bounds(through.ordinary, through.ordinary)
        sensed = total(through.parts.values()).plus(ordinary).up_to(opens_at)
        return Through(
            parts={own: sensed} if sensed.high else {},
            given={**through.given, own: ordinary} if through.ordinary else dict(through.given),
            type_b_below=through.type_b_below,
        )
    if _borne_by_type_f(arrangement, place):
        borne, _ = promised_by(DeviceType.F)
        more = {own: Bounds(borne, borne)}
        return replace(through, parts=through.parts | more, given=through.given | more)
    return through


def _borne_by_type_f(arrangement: Arrangement, place: int) -> bool:
    """Tell whether a device is a type F with equipment of its own that calls for one."""
    device = arrangement.devices[place]
    if device.device.type != DeviceType.F or not device.is_rcd:
        return False
    return any(calls_for_type_f(arrangement.loads[one]) for one in _own_loads(arrangement, place))


def _own_loads(arrangement: Arrangement, place: int) -> list[int]:
    """Return the loads on a device, with nothing but monitors between."""
    shape, devices = arrangement.shape, arrangement.devices
    monitors = [one for one in shape.children[place] if devices[one].device.form == Form.MONITOR]
    below = [number for one in monitors for number in _own_loads(arrangement, one)]
    return [*shape.loads[place], *below]


def _limit_from_above(
    arrangement: Arrangement, through: list[Through], passing: list[Through]
) -> None:
    """Set what flows through each device at most before one that senses smooth DC opens."""
    devices = arrangement.devices
    for place in reversed(arrangement.shape.bottom_up):
        opens_at = _limits(arrangement, place).opens_at
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


def _limits(arrangement: Arrangement, place: int) -> DCLimits:
    device = arrangement.devices[place].device
    return dc_limits(device, arrangement.code, arrangement.day)
