"""What an instrument would show for one test of one possible state of affairs."""

from __future__ import annotations

from dataclasses import replace
from math import inf, sqrt
from typing import NamedTuple

from checkers.domain.device.readings import HALF_WAVES, Test
from checkers.physics.condition.state import Handling, Possible, Unit
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.seen_current import Mixed, mixed_in, needed, seen
from checkers.physics.response.sensitivity import real_waveform, trip_current
from checkers.physics.response.timing import DISTURBED, NEVER, REPEATS, Trip, below, side_of, trip
from checkers.physics.scatter import SCATTER

RAMP_START = 0.2
TIMER_SCATTER = SCATTER.time_scatter.typical
TIMER_SHARE = SCATTER.time_scatter_share.typical


class Prediction(NamedTuple):
    """What would be shown: the chance of a figure (or of operating), its mean and spread.

    Figures in ms, of a ramp in mA; beyond the window of the test a figure is not shown.
    `opens_shown` is the chance that this device, and no other, opened where an operation
    is shown; `opens_unseen` the chance that it opens and the timer runs on.
    """

    shows: float
    mean: float
    spread: float
    opens_shown: float = 1.0
    opens_unseen: float = 0.0


def opens_unseen(unseen: float, shows: float) -> float:
    """Return the chance that this device opened where nothing is shown.

    Inputs: the chance that it opens and nothing is shown; the chance that something is.
    """
    return min(1.0, unseen / max(1.0 - shows, 1e-9))


def predict(possible: Possible, attempt: Attempt) -> Prediction:
    """Return what a test would show, with its scatter.

    Inputs: a possible state of affairs; a test. Result: a Prediction.
    Assumptions: see the modules that it is put together from; scatter is normal.
    """
    if attempt.is_button:
        return _button(possible, attempt)
    mixed = mixed_in(possible.surroundings, attempt)
    return _ramp(possible, attempt, mixed) if attempt.is_ramp else _time(possible, attempt, mixed)


def predictions(possible: Possible, attempt: Attempt) -> tuple[tuple[float, Prediction], ...]:
    """Return what a test would show, each with its chance: of an erratic mechanism, two things."""
    unit = possible.unit
    if unit.sticks == 1.0:
        return ((1.0, predict(possible, attempt)),)
    free = replace(possible, unit=replace(unit, first_extra=0.0, later_extra=0.0))
    return (
        (unit.sticks, predict(possible, attempt)),
        (1.0 - unit.sticks, predict(free, attempt)),
    )


def _button(possible: Possible, attempt: Attempt) -> Prediction:
    """Predict the button: its current runs beside the circuit, but DC still shifts the core."""
    unit, around = possible.unit, possible.surroundings
    extra = unit.first_extra if attempt.first else unit.later_extra
    if not unit.button_works or extra == inf:
        return Prediction(0.0, 0.0, 1.0)
    shift = mixed_in(around, attempt).dc_shift
    return Prediction(below((unit.button_current / (unit.own * shift) - 1.0) / REPEATS), 0.0, 1.0)


def _ramp(possible: Possible, attempt: Attempt, mixed: Mixed) -> Prediction:
    waveform = real_waveform(attempt, possible.handling)
    own = _trips_at(possible.unit, attempt, mixed, waveform)
    other = inf
    if possible.other is not None:
        other = _trips_at(possible.other, attempt, mixed, waveform)
    shown = min(own, other)
    if shown == inf:
        return Prediction(0.0, 0.0, 1.0)
    scatter = shown * (DISTURBED if mixed.disturbs else REPEATS)
    spread = sqrt(scatter * scatter + attempt.current_uncertainty**2)
    first = 1.0 if other == inf else below((other - own) / spread)
    runs_on = possible.handling.runs_on
    return Prediction(1.0 - runs_on, shown, spread, first, runs_on * first)


def _trips_at(unit: Unit, attempt: Attempt, mixed: Mixed, waveform: str) -> float:
    extra = unit.first_extra if attempt.first else unit.later_extra
    if extra == inf:
        return inf
    level = trip_current(unit, waveform, mixed.dc_shift)
    if waveform in HALF_WAVES and side_of(attempt.start) == unit.weak_side != "":
        level *= unit.weak_factor
    return max(needed(mixed, level), RAMP_START * attempt.rated) if level < inf else inf


def _time(possible: Possible, attempt: Attempt, mixed: Mixed) -> Prediction:
    waveform = real_waveform(attempt, possible.handling)
    current = seen(mixed, _real_current(attempt, possible.handling))
    own = _answer(possible.unit, current, attempt, mixed, waveform)
    if possible.other is None:
        return _shown(own, 1.0, attempt, possible.handling)
    other = _answer(possible.other, current, attempt, mixed, waveform)
    return _shown(*_faster(own, other), attempt, possible.handling)


def _real_current(attempt: Attempt, handling: Handling) -> float:
    if attempt.test == Test.NO_TRIP or attempt.current < 0.75 * attempt.rated:
        return attempt.current * (1.0 - handling.excess) * handling.scale_half
    scale = handling.scale_one if attempt.current < 1.8 * attempt.rated else handling.scale_more
    return attempt.current * (1.0 + handling.excess) * scale


def _answer(unit: Unit, current: float, attempt: Attempt, mixed: Mixed, waveform: str) -> Trip:
    level = trip_current(unit, waveform, mixed.dc_shift)
    strong = _trip(unit, current / level, attempt, mixed)
    side = side_of(attempt.start)
    if not unit.weak_side or side not in ("", unit.weak_side):
        return strong
    weak = _trip(unit, current / (level * unit.weak_factor), attempt, mixed)
    return weak if side else _either(strong, weak)


def _trip(unit: Unit, overcurrent: float, attempt: Attempt, mixed: Mixed) -> Trip:
    return trip(unit, overcurrent, attempt, disturbed=mixed.disturbs) if overcurrent else NEVER


def _either(strong: Trip, weak: Trip) -> Trip:
    """Return what a test shows whose start is not given: the one side or the other."""
    return strong._replace(probability=(strong.probability + weak.probability) / 2.0)


def _faster(own: Trip, other: Trip) -> tuple[Trip, float]:
    """Return the trip that is shown of two devices, and the chance that it is this one's."""
    if other.probability == 0.0 or own.probability == 0.0:
        return (other, 0.0) if own.probability == 0.0 else (own, 1.0)
    spread = sqrt(own.spread**2 + other.spread**2)
    ahead = below((other.mean - own.mean) / spread)
    first = own.probability * (1.0 - other.probability * (1.0 - ahead))
    either = 1.0 - (1.0 - own.probability) * (1.0 - other.probability)
    quicker = own if own.mean < other.mean else other
    return Trip(either, quicker.mean, quicker.spread), first / either


def _shown(own: Trip, first: float, attempt: Attempt, handling: Handling) -> Prediction:
    if own.probability == 0.0:
        return Prediction(0.0, 0.0, 1.0)
    instrument = attempt.time_uncertainty
    if instrument is None:
        instrument = TIMER_SCATTER + TIMER_SHARE * own.mean
    spread = sqrt(own.spread * own.spread + instrument * instrument)
    shows = own.probability * (1.0 - handling.runs_on)
    return Prediction(shows, own.mean, spread, first, own.probability * first * handling.runs_on)
