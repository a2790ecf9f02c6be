"""A device for practice: a place, a marking, and a hidden cause that its tests can show."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from random import Random

from checkers.domain.codes import Code
from checkers.domain.devices import Device
from checkers.domain.drills import DRILLS, FILE, SOUND, Level, Scene, Thing
from checkers.domain.errors import DataError
from checkers.domain.readings import Circuit, Instrument
from checkers.judgement.case import Case
from checkers.judgement.inference.candidates import CANDIDATES
from checkers.judgement.inference.explaining import known_of
from checkers.judgement.inference.looks import PREDICATES
from checkers.judgement.inference.noted import attempt_of
from checkers.judgement.practice.taken import reading_of
from checkers.physics.response.in_good_order import in_good_order
from checkers.physics.response.known import Known
from checkers.physics.response.lots import random_lots
from checkers.physics.response.possible import Possible
from checkers.physics.response.prediction import Prediction, predict
from checkers.physics.response.under_cause import under_cause

TRIES = 200  # at least one draw in six shows its cause: so many never fail
CLEAR = 3.0  # spreads between what a sound device and this one would show
CLEAR_CHANCE = 0.9
NO_BOND = "no-return-path"


@dataclass(frozen=True, slots=True)
class Drawn:
    """One device: the scene, the case as noted, the hidden cause, and how things really are.

    `given` are the keys of what was done before the learner comes.
    """

    scene: Scene
    case: Case
    known: Known
    cause: str
    possible: Possible
    given: tuple[str, ...]

    @property
    def device_words(self) -> str:
        """The device as it is noted."""
        device = self.case.device
        rated = device.rated_residual_current or 0.0
        return f"{rated:g} mA, type {device.type}, {device.form.upper()}"


def draw(seed: int, level: Level, code: Code, day: date) -> Drawn:
    """Return the device of a seed and a level; the same seed draws the same.

    Inputs: the seed; the level; the code and day that its limits come from.
    Assumption: a device whose cause its telling tests would not show is drawn again.
    Raises DataError where none of very many shows it.
    """
    random = Random(seed * 31 + level.number)  # noqa: S311  # a drill, nothing secret
    cause = _cause(level, random)
    scene = random.choice(_scenes(cause))
    device = Device(
        type=random.choice(level.types), rated_residual_current=random.choice(level.ratings)
    )
    case = Case(device, Circuit(), Instrument(), code, day)
    known = known_of(case, scene.supply)
    possible = _possible(cause, case, known, random)
    given = (random.choice(level.given),) if level.given_one else level.given
    return Drawn(scene, case, known, cause, possible, given)


def _possible(cause: str, case: Case, known: Known, random: Random) -> Possible:
    for _ in range(TRIES):
        lots = random_lots(random)
        possible = under_cause(cause, known, lots)
        if cause == SOUND or _shows(cause, possible, in_good_order(known, lots), case, known):
            return possible
    raise DataError(FILE, "told_by", f"nothing that is listed shows {cause!r}")


def _cause(level: Level, random: Random) -> str:
    if random.random() < level.sound_share:
        return SOUND
    return random.choice([one for one in level.causes if one != SOUND])


def _scenes(cause: str) -> Sequence[Scene]:
    """Return the places where a cause may be found: no bond is missing on a public supply."""
    own = cause == NO_BOND
    return [scene for scene in DRILLS.scenes if not own or scene.supply == "own"]


def _shows(cause: str, possible: Possible, sound: Possible, case: Case, known: Known) -> bool:
    """Tell whether one of the things that tell a cause shows it clearly."""
    things = (DRILLS.things[key] for key in DRILLS.told_by[cause])
    return any(_tells(thing, possible, sound, case, known) for thing in things)


def _tells(thing: Thing, possible: Possible, sound: Possible, case: Case, known: Known) -> bool:
    if thing.look == "dc":
        return possible.surroundings.dc >= CANDIDATES.dc
    if thing.look and thing.look != "watch":
        return PREDICATES[thing.look](possible, known)
    if possible.surroundings.disturbs:
        return thing.loads == "on"  # by its scatter, once it is repeated
    attempt = attempt_of(reading_of(thing), case, first=True)
    found = predict(possible, attempt)
    return _strange(found) if thing.look else _differ(found, predict(sound, attempt))


def _strange(found: Prediction) -> bool:
    """Tell whether eyes see otherwise than the instrument, nearly always."""
    another = found.shows * (1.0 - found.opens_shown)
    return max(another, found.opens_unseen) > CLEAR_CHANCE


def _differ(found: Prediction, sound: Prediction) -> bool:
    if abs(found.shows - sound.shows) > CLEAR_CHANCE:
        return True
    both = min(found.shows, sound.shows) > CLEAR_CHANCE
    return both and abs(found.mean - sound.mean) > CLEAR * max(found.spread, sound.spread)
