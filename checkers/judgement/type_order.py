"""Device types in the order of what they sense: each sees what the ones before it see."""

from __future__ import annotations

from collections.abc import Iterable

from checkers.domain.devices import DeviceType

ORDER = (DeviceType.AC, DeviceType.A, DeviceType.F, DeviceType.B, DeviceType.B_PLUS)


def covers(fitted: str, needed: str) -> bool:
    """Tell whether a fitted type senses all that a needed type does; an unknown type does not."""
    if fitted not in ORDER:
        return False
    return ORDER.index(DeviceType(fitted)) >= ORDER.index(DeviceType(needed))


def greatest(types: Iterable[str]) -> str:
    """Return the most demanding of some types, or AC where there are none."""
    return max(types, key=lambda one: ORDER.index(DeviceType(one)), default=DeviceType.AC)
