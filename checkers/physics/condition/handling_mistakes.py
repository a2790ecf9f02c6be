"""What each mistake with the instrument changes in a possible state of affairs."""

from __future__ import annotations

from dataclasses import replace

from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import Lots
from checkers.physics.condition.ratings import next_above, next_below
from checkers.physics.condition.state import Possible
from checkers.physics.scatter import SCATTER

RANGE_MISTAKES = 0.6  # of wrong currents; the rest are mixed-up multiples
MIXED_UP = (
    (2.0, 1.0, 1.0),  # the no-trip test made at the rating
    (1.0, 1.0, 0.2),  # five times noted, the rating set
    (1.0, 5.0, 1.0),  # the rating noted, five times set
    (1.0, 0.5, 1.0),  # the rating noted, half of it set
)  # factors on currents below, at and above the rating


def wrong_waveform(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return tests made on a half wave where AC was noted, or the other way: some, or all."""
    del known
    handling = replace(
        possible.handling, times_swapped=lots.kind < 0.7, ramp_swapped=lots.kind >= 0.3
    )
    return replace(possible, handling=handling)


def wrong_current(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return tests made on the range of another rating, or at another multiple than noted."""
    if lots.kind >= RANGE_MISTAKES:
        return _scaled(possible, MIXED_UP[int(lots.size * len(MIXED_UP))])
    rating = (next_above if lots.side < 0.5 else next_below)(known.rated, lots.size)
    scale = rating / known.rated
    return _scaled(possible, (scale, scale, scale))


def _scaled(possible: Possible, scales: tuple[float, float, float]) -> Possible:
    half, one, more = scales
    handling = replace(possible.handling, scale_half=half, scale_one=one, scale_more=more)
    return replace(possible, handling=handling)


def timer_ran_on(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return tests wired so that the timer runs on, though the device opens."""
    del known
    runs_on = SCATTER.timer_runs_on.between(lots.size)
    return replace(possible, handling=replace(possible.handling, runs_on=runs_on))
