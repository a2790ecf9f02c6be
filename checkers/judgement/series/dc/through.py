"""Smooth DC through one device: what adds up, what is a remark, and what limits it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from math import inf

from checkers.judgement.series.dc.sources import NOTHING, Bounds

Source = tuple[str, int]
"""What smooth DC comes from: ("load" or "device", its place)."""

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
