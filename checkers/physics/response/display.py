"""What an instrument's display would show for one test, drawn at random."""

from __future__ import annotations

from random import Random

from checkers.domain.device.readings import Test
from checkers.physics.condition.state import Possible
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import Prediction, opens_unseen, predictions
from checkers.physics.response.stray_readings import drawn
from checkers.physics.scatter import SCATTER

COUNTER_SHOWS = 1999.0  # a counter of four digits stops one short of two seconds
RAMP_REACH = 3.0
LEAST_TIME = 1.0


def shown_reading(
    prediction: Prediction,
    attempt: Attempt,
    random: Random,
    strays: float = SCATTER.misread.typical,
) -> str:
    """Return what the instrument, or the button, shows: 28.5 ms, > 300 ms, 22.1 mA, operates.

    Inputs: the prediction for a test; the test; the random generator; the share of readings
    that are strays.
    """
    stray = random.random() < strays
    if attempt.is_button:
        chance = 0.5 if stray else prediction.shows
        return "operates" if random.random() < chance else "does not operate"
    end, unit = display_end(attempt)
    value = _value(prediction, attempt, random, stray=stray)
    if value is None or value > end:
        return f"> {_range_end(attempt):.0f} {unit}"
    return f"{max(value, LEAST_TIME):.1f} {unit}"


def happens(possible: Possible, attempt: Attempt, random: Random) -> Prediction:
    """Return the prediction for one test; of an erratic mechanism, the one that comes by chance."""
    each = predictions(possible, attempt)
    if len(each) == 1 or random.random() < each[0][0]:
        return each[0][1]
    return each[1][1]


def watched_reading(
    prediction: Prediction,
    attempt: Attempt,
    random: Random,
    strays: float = SCATTER.misread.typical,
) -> tuple[str, bool]:
    """Return what is shown in a test that is watched, and whether this device is seen to open."""
    shown = shown_reading(prediction, attempt, random, strays)
    unseen = opens_unseen(prediction.opens_unseen, prediction.shows)
    return shown, random.random() < (unseen if shown.startswith(">") else prediction.opens_shown)


def _value(
    prediction: Prediction, attempt: Attempt, random: Random, *, stray: bool
) -> float | None:
    if stray:
        return drawn(attempt, random)
    if random.random() >= prediction.shows:
        return None
    return random.gauss(prediction.mean, prediction.spread)


def display_end(attempt: Attempt) -> tuple[float, str]:
    """Return up to where a display shows a figure [ms or mA], and its unit."""
    if attempt.is_ramp:
        return RAMP_REACH * attempt.rated, "mA"
    return attempt.window, "ms"


def _range_end(attempt: Attempt) -> float:
    end, _ = display_end(attempt)
    return min(end, COUNTER_SHOWS) if attempt.test == Test.NO_TRIP else end
