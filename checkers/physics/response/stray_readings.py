"""Readings that say nothing of the device: misread, miswritten, or a stray of the instrument.

A stray figure is the less likely the larger it is, and its likelihood falls as a power: nobody
misreads 30 ms as 1500 ms as easily as 38 ms. In a no-trip test, where a short time is the bad one,
it may be anything that the test lasts.
"""

from __future__ import annotations

from random import Random

from checkers.domain.device.readings import Test
from checkers.physics.response.attempt import Attempt
from checkers.physics.scatter import SCATTER

EITHER = 0.5  # a word says one of two things


def scale(attempt: Attempt) -> float:
    """Return about how large a stray figure is [ms or mA]."""
    if attempt.is_ramp:
        return SCATTER.stray_current_share.typical * attempt.rated
    return SCATTER.stray_time_share.typical * attempt.window


def density(attempt: Attempt, value: float, tail: float) -> float:
    """Return how likely a stray reading is to show a figure [per ms or per mA].

    Inputs: the test; the figure; the tail, by whose power large figures are rarer.
    Assumption: the law of Lomax, tail/scale · (1 + value/scale)^-(tail + 1).
    """
    if attempt.test == Test.NO_TRIP:
        return EITHER / attempt.window
    about = scale(attempt)
    return float(tail / about * (1.0 + max(0.0, value) / about) ** -(tail + 1.0))


def chance_beyond(attempt: Attempt, bound: float, tail: float) -> float:
    """Return how likely a stray reading is to show more than a bound [ms or mA], or no trip."""
    if attempt.is_button or attempt.test == Test.NO_TRIP:
        return EITHER
    return float((1.0 + max(0.0, bound) / scale(attempt)) ** -tail)


def drawn(attempt: Attempt, random: Random) -> float | None:
    """Return a stray figure [ms or mA], or None where the stray shows no trip."""
    share = random.random()
    if attempt.test == Test.NO_TRIP:
        return None if share < EITHER else (2.0 * share - 1.0) * attempt.window
    tail = SCATTER.stray_tail.typical
    return float(scale(attempt) * ((1.0 - share) ** (-1.0 / tail) - 1.0))
