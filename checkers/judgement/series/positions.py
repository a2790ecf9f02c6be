"""Names of devices, and who is below whom, turned into places; and what is wrong with them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Protocol

from checkers.domain.errors import quoted

BOTH = ","


class Named(Protocol):
    """Anything with a name that stands below devices named in a text."""

    @property
    def id(self) -> str:
        """Its own name."""

    @property
    def below(self) -> str:
        """The name of the device above it; several with commas between; empty at the supply."""


def parents_of(one: Named, places: Mapping[str, int]) -> tuple[int, ...]:
    """Return the places of the devices above, each once; names that are not there are left out."""
    found = [places[name] for name in names_above(one) if name in places]
    return tuple(dict.fromkeys(found))


def names_above(one: Named) -> list[str]:
    """Return the names of the devices above, as they are compared."""
    return [as_compared(name) for name in one.below.split(BOTH) if name.strip()]


def as_compared(name: str) -> str:
    """Return a name without the differences a person does not mean: case and spaces."""
    return " ".join(name.split()).casefold()


def places_of(devices: Sequence[Named]) -> dict[str, int]:
    """Return the place of each device by its name; of two alike, the first."""
    places: dict[str, int] = {}
    for place, one in enumerate(devices):
        places.setdefault(as_compared(one.id), place)
    return places


def problems_of(devices: Sequence[Named], loads: Sequence[Named]) -> dict[str, str]:
    """Return what is wrong with names and places, by field.

    A name twice or with a comma in it, a device above that is not there, a load that stands
    below none, and devices that stand below one another in a loop.
    """
    places = places_of(devices)
    problems = {**_twice(devices, "devices"), **_twice(loads, "loads")}
    for kind, group in (("devices", devices), ("loads", loads)):
        for place, one in enumerate(group):
            problem = _not_there(one, places, devices)
            if problem or (kind == "loads" and not names_above(one)):
                field = f"{kind}[{place}].below"
                problems[field] = problem or "is needed: the name of the device that feeds it"
    return {**problems, **_loops(devices, places)}


def _twice(group: Sequence[Named], kind: str) -> dict[str, str]:
    problems: dict[str, str] = {}
    seen: dict[str, int] = {}
    for place, one in enumerate(group):
        name = as_compared(one.id)
        if BOTH in name:
            problems[f"{kind}[{place}].id"] = "must not hold a comma"
        elif name and seen.setdefault(name, place) != place:
            problems[f"{kind}[{place}].id"] = (
                f"{quoted(one.id)} is the name of {kind}[{seen[name]}]"
            )
    return problems


def _not_there(one: Named, places: Mapping[str, int], devices: Sequence[Named]) -> str:
    named = [" ".join(name.split()) for name in one.below.split(BOTH)]
    unknown = [name for name in named if name and as_compared(name) not in places]
    if not unknown:
        return ""
    known = ", ".join(device.id for device in devices)
    return f"{quoted(unknown[0])} is the name of no device here: there is {known}"


def _loops(devices: Sequence[Named], places: Mapping[str, int]) -> dict[str, str]:
    above = [parents_of(one, places) for one in devices]
    problems = {}
    for place in range(len(devices)):
        loop = _way_back(place, above)
        if loop:
            named = " → ".join(devices[step].id for step in loop)
            problems[f"devices[{place}].below"] = f"makes a loop: {named}"
    return problems


def _way_back(start: int, above: Sequence[Sequence[int]]) -> list[int]:
    """Return the shortest way up from a device to itself, or nothing where there is none."""
    came_from: dict[int, int] = {}
    waiting = [start]
    for place in waiting:
        for parent in above[place]:
            if parent == start:
                return _retraced(start, place, came_from)
            if parent not in came_from:
                came_from[parent] = place
                waiting.append(parent)
    return []


def _retraced(start: int, last: int, came_from: Mapping[int, int]) -> list[int]:
    way = [start, last]
    while way[-1] != start:
        way.append(came_from[way[-1]])
    return way[::-1]
