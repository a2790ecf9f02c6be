"""A tree of devices with the loads on them, as it is judged."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import TypeVar

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device
from checkers.domain.inputs.fields import Labelled
from checkers.judgement.equipment.equipment import Equipment

One = TypeVar("One")


class DCProtection(Labelled):
    """What a load has of its own against smooth DC."""

    NONE = "none", "none, or not known"
    RDC_DD = "rdc-dd", "6 mA DC detection that opens its supply"
    TYPE_B = "type-b", "a type B of its own, built in"


@dataclass(frozen=True, slots=True)
class PlacedDevice:
    """A device with its name, and the places of the devices above it: none at the supply.

    More than one above means that it is fed through all of them in parallel. `fitted_on` is
    the day whose code counts for its type, or None for the day asked about.
    """

    id: str
    device: Device
    parents: tuple[int, ...]
    fitted_on: date | None = None

    @property
    def is_rcd(self) -> bool:
        """Whether it protects by itself: a monitor warns, and 6 mA detection only helps."""
        return self.device.protects


@dataclass(frozen=True, slots=True)
class PlacedLoad:
    """Equal pieces of equipment: what it is, how many, and the devices it is fed through."""

    name: str
    equipment: Equipment
    count: int
    protection: str
    parents: tuple[int, ...]

    @property
    def declared(self) -> float | None:
        """The smooth DC [mA] that its maker declares at most for each, or None."""
        return self.equipment.declared


@dataclass(frozen=True, slots=True)
class Shape:
    """Who stands below whom, by place: devices on a device, loads on it, lowest first.

    `feeds` tells for each device whether any load is named below it.
    """

    children: tuple[tuple[int, ...], ...]
    loads: tuple[tuple[int, ...], ...]
    bottom_up: tuple[int, ...]
    feeds: tuple[bool, ...]


@dataclass(frozen=True, slots=True)
class Arrangement:
    """All devices and loads with their shape, the code and the day they are judged by."""

    devices: tuple[PlacedDevice, ...]
    loads: tuple[PlacedLoad, ...]
    code: Code
    day: date
    shape: Shape

    def above(self, places: Iterable[int]) -> list[int]:
        """Return the devices above some devices, the nearest first, each once."""
        return _reached(places, [one.parents for one in self.devices])

    def below(self, place: int) -> list[int]:
        """Return the devices below a device, the nearest first, each once."""
        return _reached([place], self.shape.children)

    def with_device(self, place: int, device: PlacedDevice) -> Arrangement:
        """Return the arrangement with another device in a place, under the same ones."""
        return replace(self, devices=_with(self.devices, place, device))

    def with_load(self, place: int, load: PlacedLoad) -> Arrangement:
        """Return the arrangement with another load in a place, on the same devices."""
        return replace(self, loads=_with(self.loads, place, load))


def arrange(
    devices: Sequence[PlacedDevice], loads: Sequence[PlacedLoad], code: Code, day: date
) -> Arrangement:
    """Return an arrangement with its shape worked out; there must be no loop in it."""
    return Arrangement(tuple(devices), tuple(loads), code, day, _shape(devices, loads))


def _reached(start: Iterable[int], steps: Sequence[Sequence[int]]) -> list[int]:
    waiting = list(start)
    found: dict[int, None] = {}
    for place in waiting:
        new = [one for one in steps[place] if one not in found]
        found.update(dict.fromkeys(new))
        waiting += new
    return list(found)


def _with(all_of: tuple[One, ...], place: int, one: One) -> tuple[One, ...]:
    return (*all_of[:place], one, *all_of[place + 1 :])


def _shape(devices: Sequence[PlacedDevice], loads: Sequence[PlacedLoad]) -> Shape:
    children: list[list[int]] = [[] for _ in devices]
    fed: list[list[int]] = [[] for _ in devices]
    for place, one in enumerate(devices):
        for parent in one.parents:
            children[parent].append(place)
    for place, load in enumerate(loads):
        for parent in load.parents:
            fed[parent].append(place)
    order = _bottom_up(devices, children)
    feeds = [False] * len(devices)
    for place in order:
        feeds[place] = bool(fed[place]) or any(feeds[child] for child in children[place])
    return Shape(tuple(map(tuple, children)), tuple(map(tuple, fed)), order, tuple(feeds))


def _bottom_up(
    devices: Sequence[PlacedDevice], children: Sequence[Sequence[int]]
) -> tuple[int, ...]:
    """Return the places of all devices, each after everything below it."""
    waiting = [len(below) for below in children]
    ready = [place for place, count in enumerate(waiting) if count == 0]
    for place in ready:
        for parent in devices[place].parents:
            waiting[parent] -= 1
            if waiting[parent] == 0:
                ready.append(parent)
    return tuple(ready)
