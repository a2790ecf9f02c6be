"""A device for practice: a place, a marking, and a hidden cause that its tests can show."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import product
from random import Random

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.errors import DataError
from checkers.domain.quantities.measured_value import Said
from checkers.domain.verdicts import Finding, Outcome
from checkers.judgement.case import Case
from checkers.judgement.inference.candidates import CANDIDATES
from checkers.judgement.inference.explanation import known_of
from checkers.judgement.inference.observables import PREDICATES
from checkers.judgement.inference.weighing.attempts import attempt_of
from checkers.judgement.leakage.standing_leakage import budget_of
from checkers.judgement.practice.drills import DRILLS, FILE, SOUND, PracticeLevel, Scene, Thing
from checkers.judgement.practice.test_results import Taken, reading_of, take
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import Lots, random_lots
from checkers.physics.condition.sound_device import in_good_order
from checkers.physics.condition.state import Possible
from checkers.physics.condition.under_cause import under_cause
from checkers.physics.response.prediction import Prediction, predict
from checkers.wording.book import part

TRIES = 200  # at least one draw in six shows its cause: so many never fail
CLEAR = 3.0  # spreads between what a sound device and this one would show
CLEAR_CHANCE = 0.9
ORDINARY = 3.0  # deviations from the usual trip current within which sound devices lie
CLEARLY_OVER = 1.25
HELD_BACK = 12.0  # ms: more than half a period, which no device left alone differs by
LAST_SEED = 999_999
NO_BOND = "no-return-path"
TOO_LOW = "type-too-low"
OF_THE_TYPE = frozenset({"blinded-by-dc", TOO_LOW})  # where the type does not fit

Fit = Callable[[Scene, Device, Code, date], Finding]
"""From a place and its device to what decides whether the type fits the equipment there."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """One device: the scene, the case as noted, the hidden cause, and how things really are.

    `fit` is what type-for-load says of the device as noted at this place; `given` are the keys
    of what was done before the learner comes; `lots` are the numbers drawn, and `shown_by` is
    the seed of what its tests show.
    """

    scene: Scene
    case: Case
    known: Known
    cause: str
    possible: Possible
    lots: Lots
    fit: Finding
    given: tuple[str, ...]
    shown_by: int

    @property
    def device_words(self) -> str:
        """The device as it is noted."""
        device = self.case.device
        rated = device.rated_residual_current or 0.0
        facts = {"rated": f"{rated:g}", "type": device.type, "form": device.form.upper()}
        return part("practice.device", **facts)


def draw(seed: int, level: PracticeLevel, code: Code, day: date, fit: Fit) -> Drawn:
    """Return the device of a seed and a level; the same seed draws the same.

    Inputs: the seed; the level; the code and day that its limits come from; what judges a
    device at a place. A device that does not fit is drawn only where that is the cause.
    Assumption: a device whose cause its telling tests would not show is drawn again.
    Raises DataError where none of very many shows it.
    """
    random = Random(seed * 31 + level.number)  # noqa: S311  # a drill, nothing secret
    cause = _cause(level, random)
    scene, device, why = random.choice(_placed(cause, level, code, day, fit))
    case = Case(device, Circuit(), Instrument(), code, day)
    known = known_of(case, scene.supply)
    possible, lots = _possible(cause, case, known, random)
    given = (random.choice(level.given),) if level.given_one else level.given
    shown_by = _shown_by(seed, _on_a_sheet(cause, given), possible, case, known)
    return Drawn(scene, case, known, cause, possible, lots, why, given, shown_by)


def _on_a_sheet(cause: str, given: Sequence[str]) -> list[Thing]:
    keys = [*given, *(key for key in DRILLS.telling(cause) if key not in given)]
    return [DRILLS.things[key] for key in keys]


def _shown_by(
    seed: int, things: Sequence[Thing], possible: Possible, case: Case, known: Known
) -> int:
    """Return the seed of what tests show: one that shows the scatter which a load brings.

    That scatter tells the cause by chance only, so the first seed is taken that holds a trip
    with the loads on clearly back, where the things of a sheet are done.
    """
    if not possible.surroundings.disturbs:
        return seed
    tried = (seed + again * LAST_SEED for again in range(TRIES))
    for one in tried:
        taken = take(things, possible, case, known, one)
        on, off = (_times(taken, loads) for loads in ("on", "off"))
        if on and off and max(on) > max(off) + HELD_BACK and max(on) > min(on) + HELD_BACK:
            return one
    return seed


def _times(taken: Sequence[Taken], loads: str) -> list[float]:
    """Return the times [ms] shown with the loads on or off, at the greatest multiple taken."""
    readings = [one.reading for one in taken if one.reading is not None]
    most = max((one.multiple or 0.0 for one in readings), default=0.0)
    same = (one for one in readings if one.loads == loads and one.multiple == most)
    return [one.measured.value for one in same if one.measured.said is Said.FIGURE]


def _placed(
    cause: str, level: PracticeLevel, code: Code, day: date, fit: Fit
) -> list[tuple[Scene, Device, Finding]]:
    """Return every place with a device of the level where a cause may be found.

    A device that type-for-load fails there is one whose type is the cause; every other cause
    has a device that it passes.
    """
    wanted = Outcome.FAIL if cause in OF_THE_TYPE else Outcome.PASS
    devices = [
        Device(type=kind, rated_residual_current=rated)
        for kind, rated in product(level.types, level.ratings)
    ]
    judged = (
        (scene, device, fit(scene, device, code, day))
        for scene, device in product(_scenes(cause), devices)
    )
    found = [one for one in judged if one[2].outcome is wanted]
    if not found:
        raise DataError(FILE, "scene", f"no place has a device for {cause!r} on this level")
    return found


def _possible(cause: str, case: Case, known: Known, random: Random) -> tuple[Possible, Lots]:
    for _ in range(TRIES):
        lots = random_lots(random)
        possible = under_cause(cause, known, lots)
        sound = [in_good_order(known, one) for one in _twins(lots)]
        if cause == SOUND or _shows(cause, possible, sound, case, known):
            return possible, lots
    raise DataError(FILE, "told_by", f"nothing that is listed shows {cause!r}")


def _cause(level: PracticeLevel, random: Random) -> str:
    if random.random() < level.sound_share:
        return SOUND
    return random.choice([one for one in level.causes if one != SOUND])


def _scenes(cause: str) -> Sequence[Scene]:
    """Return the places where a cause may be found: no bond is missing on a public supply."""
    own = cause == NO_BOND
    return [scene for scene in DRILLS.scenes if not own or scene.supply == "own"]


def _twins(lots: Lots) -> list[Lots]:
    """Return the numbers of a sound device like this one, and of the dullest and the keenest."""
    return [lots, lots._replace(own=ORDINARY), lots._replace(own=-ORDINARY)]


def _shows(
    cause: str, possible: Possible, sound: Sequence[Possible], case: Case, known: Known
) -> bool:
    """Tell whether one of the things that tell a cause shows it clearly.

    A type that is too low is told by its marking, beside the equipment.
    """
    if cause == TOO_LOW:
        return True
    things = (DRILLS.things[key] for key in DRILLS.told_by[cause])
    return any(_tells(thing, possible, sound, case, known) for thing in things)


def _tells(
    thing: Thing, possible: Possible, sound: Sequence[Possible], case: Case, known: Known
) -> bool:
    if thing.look == "dc":
        return possible.surroundings.dc >= CANDIDATES.dc
    if thing.look == "leakage":
        return possible.surroundings.leakage > _too_much(case)
    if thing.look and thing.look != "watch":
        return PREDICATES[thing.look](possible, known)
    if possible.surroundings.disturbs:
        return thing.loads == "on"  # by its scatter, once it is repeated
    attempt = attempt_of(reading_of(thing), case, first=True)
    found = predict(possible, attempt)
    if thing.look:
        return _strange(found)
    return all(_differ(found, predict(one, attempt)) for one in sound)


def _too_much(case: Case) -> float:
    """Return the leakage [mA] that leakage-budget fails, whatever the clamp may be off by."""
    rated = case.device.rated_residual_current or 0.0
    limit = budget_of(case).limit
    return CLEARLY_OVER * (rated / 2.0 if limit is None else limit)


def _strange(found: Prediction) -> bool:
    """Tell whether eyes see otherwise than the instrument, nearly always."""
    another = found.shows * (1.0 - found.opens_shown)
    return max(another, found.opens_unseen) > CLEAR_CHANCE


def _differ(found: Prediction, sound: Prediction) -> bool:
    if abs(found.shows - sound.shows) > CLEAR_CHANCE:
        return True
    both = min(found.shows, sound.shows) > CLEAR_CHANCE
    return both and abs(found.mean - sound.mean) > CLEAR * max(found.spread, sound.spread)
