"""Device types in the order of what they sense: each sees what the ones before it see."""

from __future__ import annotations

from collections.abc import Iterable

from checkers.domain.device.device import DeviceType
from checkers.wording.book import part

ORDER: tuple[str, ...] = tuple(
    kind.value
    for kind in (DeviceType.AC, DeviceType.A, DeviceType.F, DeviceType.B, DeviceType.B_PLUS)
)


def covers(fitted: str, needed: str) -> bool:
    """Tell whether a fitted type senses all that a needed type does; an unknown type does not."""
    return fitted in ORDER and ORDER.index(fitted) >= ORDER.index(needed)


def greatest(types: Iterable[str]) -> str:
    """Return the most demanding of some types."""
    return max(types, key=ORDER.index)


def least(types: Iterable[str]) -> str:
    """Return the least demanding of some types."""
    return min(types, key=ORDER.index)


def in_words(types: Iterable[str]) -> str:
    """Return some types as words, in their order: A, F or B."""
    ordered = sorted(types, key=ORDER.index)
    listed = (", ".join(ordered[:-1]), ordered[-1])
    return part("equipment.or").join(one for one in listed if one)
