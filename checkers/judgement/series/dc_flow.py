"""The greatest smooth DC that can flow through each device of an arrangement unseen."""

from __future__ import annotations

from dataclasses import dataclass, field
from math import inf

from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.dc_limits import DCLimits, dc_limits
from checkers.judgement.series.dc_sources import Bounds, can_give_smooth_dc, left_by

Source = tuple[str, int]
"""What smooth DC comes from: ("load" or "device", its place)."""

NOTHING = Bounds(0.0, 0.0)
ANYTHING = Bounds(inf, inf)


@dataclass(slots=True)
class Through:
    """Smooth DC [mA] through one device: what adds up, by source, and what does not.

    `ordinary` is the most that any one piece of ordinary electronics below may leave, which is
    not added to the rest; `type_b_below` tells whether a type B stands below the device;
    `ceiling` is what the devices above let pass at most before they open.
    """

    parts: dict[Source, Bounds] = field(default_factory=dict)
    ordinary: float = 0.0
    type_b_below: bool = False
    ceiling: float = inf

    @property
    def bounds(self) -> Bounds:
        """All of it together, in the worst case."""
        low = max(sum(part.low for part in self.parts.values()), self.ordinary)
        high = max(sum(part.high for part in self.parts.values()), self.ordinary)
        return Bounds(low, high).up_to(self.ceiling)


def flow_through(arrangement: Arrangement) -> list[Through]:
    """Return what can flow through each device, by its place.

    Assumptions: what several sources leave adds up. A device that senses smooth DC lets no
    more pass than the current at which it opens at the latest; every other lets all pass. Of
    paths in parallel, each may carry all of it; above the place where they meet again it
    counts once.
    """
    passing: list[Through] = [Through()] * len(arrangement.devices)
    through = list(passing)
    for place in arrangement.shape.bottom_up:
        through[place] = _gathered(arrangement, place, passing)
        passing[place] = _passed_on(arrangement, place, through[place])
    _limit_from_above(arrangement, through)
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
        if load.protection == DCProtection.TYPE_B and load.declared is None:
            found.type_b_below = True
    for child in arrangement.shape.children[place]:
        below = passing[child]
        found.parts.update(below.parts)
        found.ordinary = max(found.ordinary, below.ordinary)
        found.type_b_below |= below.type_b_below
    if not arrangement.shape.feeds[place] and _limits(arrangement, place).senses:
        found.parts["device", place] = ANYTHING
    return found


def _passed_on(arrangement: Arrangement, place: int, through: Through) -> Through:
    limits = _limits(arrangement, place)
    if not limits.senses:
        return through
    opens_at = inf if limits.opens_at is None else limits.opens_at
    bounds = through.bounds.up_to(opens_at)
    return Through(
        parts={("device", place): bounds} if through.parts else {},
        ordinary=min(through.ordinary, opens_at),
        type_b_below=through.type_b_below or arrangement.devices[place].is_rcd,
    )


def _limit_from_above(arrangement: Arrangement, through: list[Through]) -> None:
    """Set what flows through each device at most before it, or one above, opens on smooth DC."""
    for place in reversed(arrangement.shape.bottom_up):
        own = _limits(arrangement, place).opens_at
        parents = arrangement.devices[place].parents
        above = max((through[parent].ceiling for parent in parents), default=inf)
        through[place].ceiling = min(inf if own is None else own, above)


def _limits(arrangement: Arrangement, place: int) -> DCLimits:
    device = arrangement.devices[place].device
    return dc_limits(device, arrangement.code, arrangement.day)
