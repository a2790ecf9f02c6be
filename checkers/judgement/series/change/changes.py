"""Changes that can mend an arrangement: swap a type, move a branch, add what is missing."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Protocol

from checkers.domain.device.device import Device, DeviceType
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.judgement.equipment.type_order import ORDER, covers
from checkers.judgement.equipment.type_rules import other_means
from checkers.judgement.series.arrangement import (
    Arrangement,
    DCProtection,
    PlacedDevice,
    arrange,
)
from checkers.judgement.series.change.efforts import EFFORTS
from checkers.judgement.series.dc.flow_words import pieces
from checkers.judgement.series.dc.limits import dc_limits
from checkers.judgement.series.dc.sources import left_by
from checkers.judgement.series.device_type.type_fit import protected_by
from checkers.wording.book import part

SWAPPED_TO = (DeviceType.A, DeviceType.F, DeviceType.B, DeviceType.B_PLUS)
OWN_RATING = CONSTANTS["built_in_type_b_rating"].value


class Change(Protocol):
    """One change: how much work it is, what it makes of an arrangement, and its words."""

    @property
    def effort(self) -> float:
        """How much work it is, against the others."""

    def made_to(self, arrangement: Arrangement) -> Arrangement:
        """Return the arrangement after the change."""

    def words(self, arrangement: Arrangement) -> str:
        """Return what is to be done, as one sentence without its stop."""

    def reaches(self, arrangement: Arrangement) -> set[int]:
        """Return the places of the devices that it can put right."""


@dataclass(frozen=True, slots=True)
class SwapType:
    """Another type in a device's place."""

    place: int
    type: str

    @property
    def effort(self) -> float:
        """How much work it is, against the others."""
        return EFFORTS[f"type-{self.type}"]

    def made_to(self, arrangement: Arrangement) -> Arrangement:
        """Return the arrangement after the change."""
        old = arrangement.devices[self.place]
        new = replace(old, device=replace(old.device, type=self.type))
        return arrangement.with_device(self.place, new)

    def reaches(self, arrangement: Arrangement) -> set[int]:
        """Return the places of the devices that it can put right."""
        del arrangement
        return {self.place}

    def words(self, arrangement: Arrangement) -> str:
        """Return what is to be done, as one sentence without its stop."""
        old = arrangement.devices[self.place]
        return part("series.swap-type", type=self.type, device=old.id, old=old.device.type)


@dataclass(frozen=True, slots=True)
class FeedBeside:
    """A branch fed from where the device above it is fed: beside that one, not below it."""

    place: int

    @property
    def effort(self) -> float:
        """How much work it is, against the others."""
        return EFFORTS["beside"]

    def made_to(self, arrangement: Arrangement) -> Arrangement:
        """Return the arrangement after the change."""
        old = arrangement.devices[self.place]
        moved = replace(old, parents=_above(arrangement, old.parents))
        devices = arrangement.with_device(self.place, moved).devices
        return arrange(devices, arrangement.loads, arrangement.code, arrangement.day)

    def reaches(self, arrangement: Arrangement) -> set[int]:
        """Return the places of the devices that it can put right."""
        return set(arrangement.above([self.place]))

    def words(self, arrangement: Arrangement) -> str:
        """Return what is to be done, as one sentence without its stop."""
        old = arrangement.devices[self.place]
        return part("series.feed-beside", device=old.id, beside=_names(arrangement, old.parents))


@dataclass(frozen=True, slots=True)
class AddDetection:
    """6 mA detection in equipment that may have it."""

    number: int

    @property
    def effort(self) -> float:
        """How much work it is, against the others."""
        return EFFORTS["detection"]

    def made_to(self, arrangement: Arrangement) -> Arrangement:
        """Return the arrangement after the change."""
        old = arrangement.loads[self.number]
        equipment = replace(old.equipment, detection=True)
        new = replace(old, protection=DCProtection.RDC_DD, equipment=equipment)
        return arrangement.with_load(self.number, new)

    def reaches(self, arrangement: Arrangement) -> set[int]:
        """Return the places of the devices that it can put right."""
        parents = arrangement.loads[self.number].parents
        return {*parents, *arrangement.above(parents)}

    def words(self, arrangement: Arrangement) -> str:
        """Return what is to be done, as one sentence without its stop."""
        return part("series.add-detection", load=arrangement.loads[self.number].name)


@dataclass(frozen=True, slots=True)
class GiveOwnDevice:
    """A device of its own for a load, beside the one it shares."""

    number: int

    @property
    def effort(self) -> float:
        """How much work it is, against the others."""
        return EFFORTS["own-device"]

    def made_to(self, arrangement: Arrangement) -> Arrangement:
        """Return the arrangement after the change."""
        load = arrangement.loads[self.number]
        own = PlacedDevice(
            part("series.own-device-of", load=load.name),
            self._device(arrangement),
            _above(arrangement, load.parents),
        )
        devices = (*arrangement.devices, own)
        moved = arrangement.with_load(self.number, replace(load, parents=(len(devices) - 1,)))
        return arrange(devices, moved.loads, arrangement.code, arrangement.day)

    def reaches(self, arrangement: Arrangement) -> set[int]:
        """Return the places of the devices that it can put right."""
        parents = arrangement.loads[self.number].parents
        return {*parents, *arrangement.above(parents)}

    def words(self, arrangement: Arrangement) -> str:
        """Return what is to be done, as one sentence without its stop."""
        load = arrangement.loads[self.number]
        device = self._device(arrangement)
        return part(
            "series.give-own-device",
            load=pieces(load.count, load.name),
            type=device.type,
            rating=format_quantity(device.rated_residual_current or OWN_RATING, "mA"),
            beside=_names(arrangement, load.parents),
        )

    def _device(self, arrangement: Arrangement) -> Device:
        load = arrangement.loads[self.number]
        ratings = [arrangement.devices[one].device.rated_residual_current for one in load.parents]
        rated = min([OWN_RATING, *(one for one in ratings if one is not None)])
        return Device(next(filter(self._serves(arrangement, rated), SWAPPED_TO)), rated)

    def _serves(self, arrangement: Arrangement, rated: float) -> Callable[[str], bool]:
        """Return what tells whether a type suits the load, and bears what it can leave."""
        load, code, day = arrangement.loads[self.number], arrangement.code, arrangement.day
        left = left_by(load, code, day).high

        def serves(kind: str) -> bool:
            limits = dc_limits(Device(kind, rated), code, day)
            bears = limits.senses or (limits.bears or 0.0) >= left
            return bears and covers(kind, load.equipment.least_type)

        return serves


def _names(arrangement: Arrangement, places: Iterable[int]) -> str:
    """Return the names of some devices in a row."""
    return part("series.and").join(arrangement.devices[one].id for one in places)


def _above(arrangement: Arrangement, parents: Sequence[int]) -> tuple[int, ...]:
    """Return the devices above some devices; none of them means at the supply."""
    found = [above for parent in parents for above in arrangement.devices[parent].parents]
    return tuple(dict.fromkeys(found))


def changes_at(arrangement: Arrangement, place: int) -> Iterator[Change]:
    """Yield the changes that can mend a device that is not fit: at it, and just below it."""
    device, numbers = arrangement.devices[place].device, protected_by(arrangement, place)
    asked = {arrangement.loads[number].equipment.maker_type for number in numbers}
    for kind in SWAPPED_TO:
        wider = device.type in ORDER and not covers(device.type, kind)
        if wider and (kind != DeviceType.B_PLUS or kind in asked):
            yield SwapType(place, kind)
    for child in arrangement.shape.children[place]:
        if arrangement.devices[child].parents == (place,):
            yield FeedBeside(child)
    for number in numbers:
        if _is_shared(arrangement, place, numbers):
            yield GiveOwnDevice(number)


def detections(arrangement: Arrangement) -> Iterator[Change]:
    """Yield 6 mA detection for each load without protection that may have it."""
    for number, load in enumerate(arrangement.loads):
        unprotected = load.protection == DCProtection.NONE
        elsewhere = other_means(arrangement.code, load.equipment, arrangement.day)
        if unprotected and load.equipment.asks_for_detection and not elsewhere:
            yield AddDetection(number)


def _is_shared(arrangement: Arrangement, place: int, numbers: Sequence[int]) -> bool:
    more = len(numbers) > 1 or bool(arrangement.shape.children[place])
    return more and not arrangement.devices[place].device.detects_dc
