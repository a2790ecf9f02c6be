"""What a learner's tests and looks show of a drawn device."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from random import Random

from checkers.domain.device.placed_readings import PlacedReading
from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.case import Case
from checkers.judgement.inference.observables import PREDICATES
from checkers.judgement.inference.weighing.attempts import SHOWS_OPERATION, attempt_of
from checkers.judgement.practice.drills import Thing
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.state import Possible
from checkers.physics.response.display import happens, shown_reading, watched_reading
from checkers.wording.book import part

CLAMP_SCATTER = 0.03
STRAYS = 0.0  # a reading that says nothing would only mislead: nobody could find it out here
# By what is looked at: where it is out of the ordinary, and where it is not.
LOOK_WORDS = {
    "path": ("practice.path-found", "practice.path-not-found"),
    "settings": ("practice.settings-wrong", "practice.settings-right"),
    "bond": ("practice.bond-missing", "practice.bond-there"),
}

# By whether a time was shown, and whether this device opened.
WATCHED = {
    (True, True): "practice.this-device-opened",
    (True, False): "practice.another-device-opened",
    (False, True): "practice.opened-while-timer-ran",
    (False, False): "practice.nothing-opened",
}


@dataclass(frozen=True, slots=True)
class Taken:
    """One thing done: what it showed in words, the reading where it was a test.

    `strange` is whether a look found something out of the ordinary, `current` what a
    clamp showed [mA], `opened` whether this device was seen to open in this very test.
    """

    thing: Thing
    shows: str
    reading: PlacedReading | None = None
    strange: bool | None = None
    current: float | None = None
    opened: bool | None = None

    @property
    def seen_otherwise(self) -> bool | None:
        """Whether this device was seen to open, where the instrument shows otherwise."""
        if self.reading is None or self.opened is None:
            return None
        shown = self.reading.measured.said in SHOWS_OPERATION
        return None if shown is self.opened else self.opened


def take(
    things: Sequence[Thing], possible: Possible, case: Case, known: Known, seed: int
) -> list[Taken]:
    """Return what each thing shows, in order; the same seed shows the same.

    Inputs: the things done, in their order; the device and circuit as they really are;
    the case as noted; what is known; a seed.
    """
    taken: list[Taken] = []
    for place, thing in enumerate(things):
        random = Random(seed * 1009 + place)  # noqa: S311  # a drill, nothing secret
        earlier = (one.reading for one in taken if one.reading is not None)
        first = not any(attempt_of(one, case, first=False).tries_the_mechanism for one in earlier)
        if thing.look == "watch":
            taken.append(_watched(thing, possible, case, random, first=first))
        elif thing.look:
            taken.append(_looked(thing, possible, known, random))
        else:
            taken.append(_tested(thing, possible, case, random, first=first))
    return taken


def reading_of(thing: Thing) -> PlacedReading:
    """Return the reading of a test before it has a value; what is watched is a trip time."""
    plain = PlacedReading(
        value="-",
        test=thing.test,
        multiple=thing.multiple,
        waveform=thing.waveform,
        phase=thing.phase,
        place=thing.place,
        loads=thing.loads,
    )
    watched = thing.look == "watch"
    return replace(plain, test="trip-time", multiple=1.0, phase="0") if watched else plain


def _tested(thing: Thing, possible: Possible, case: Case, random: Random, *, first: bool) -> Taken:
    reading = reading_of(thing)
    attempt = attempt_of(reading, case, first=first)
    shows = shown_reading(happens(possible, attempt, random), attempt, random, STRAYS)
    return Taken(thing, shows, replace(reading, value=shows))


def _looked(thing: Thing, possible: Possible, known: Known, random: Random) -> Taken:
    if thing.look == "marking":
        return Taken(thing, _marking(possible), strange=PREDICATES["marking"](possible, known))
    if thing.look in ("dc", "leakage"):
        around = possible.surroundings
        flows = around.dc if thing.look == "dc" else around.leakage + around.borrowed
        current = round(max(0.0, flows * random.gauss(1.0, CLAMP_SCATTER)), 1)
        return Taken(thing, format_quantity(current, "mA"), current=current)
    strange = PREDICATES[thing.look](possible, known)
    found, not_found = LOOK_WORDS[thing.look]
    return Taken(thing, part(found if strange else not_found), strange=strange)


def _marking(possible: Possible) -> str:
    unit = possible.unit
    code = "practice.marking" if unit.delay == "none" else "practice.marking-with-delay"
    rated = format_quantity(unit.rated, "mA")
    return part(code, rated=rated, type=unit.type, delay=unit.delay)


def _watched(thing: Thing, possible: Possible, case: Case, random: Random, *, first: bool) -> Taken:
    """Watch a trip time: the time is noted, and which device opened."""
    reading = reading_of(thing)
    attempt = attempt_of(reading, case, first=first)
    shows, opened = watched_reading(happens(possible, attempt, random), attempt, random, STRAYS)
    noted = replace(reading, value=shows)
    watched = WATCHED[noted.measured.said in SHOWS_OPERATION, opened]
    return Taken(thing, part(watched, shows=shows), noted, opened=opened)
