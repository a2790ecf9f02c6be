"""How long a device takes at a given overcurrent, and how surely it trips."""

from __future__ import annotations

from math import erf, inf, log, sqrt
from typing import NamedTuple

from checkers.domain.device.readings import Waveform
from checkers.physics.condition.state import Unit
from checkers.physics.response.attempt import Attempt
from checkers.physics.scatter import SCATTER

REPEATS = SCATTER.trip_current_repeats.typical
DISTURBED = SCATTER.disturbed_current.typical
HELD_BACK = SCATTER.disturbed_share.typical * SCATTER.disturbance.typical / 2.0
HELD_BACK_VARIANCE = SCATTER.disturbed_share.typical * SCATTER.disturbance.typical**2 / 3.0 - (
    HELD_BACK**2
)
TIME_REPEATS = SCATTER.time_repeats.typical
STICKING_SCATTER = SCATTER.sticking_scatter.typical
ROOT_OF_TWO = sqrt(2.0)


class Trip(NamedTuple):
    """The probability that a device trips, and its time [ms] if so: mean and standard deviation."""

    probability: float
    mean: float
    spread: float


NEVER = Trip(0.0, inf, 1.0)


def below(value: float) -> float:
    """Return the share of a standard normal distribution below a value."""
    return 0.5 + 0.5 * erf(value / ROOT_OF_TWO)


def trip(unit: Unit, overcurrent: float, attempt: Attempt, *, disturbed: bool) -> Trip:
    """Return how a device answers a current switched on at once.

    Inputs: the device; the current it sees over its trip current [no unit]; the test;
    whether a connected load disturbs.
    Result: the chance that it trips, and the time.
    Assumptions: a lag of first order reaches the trip level after lag × ln(r / (r − 1));
    before it comes the wait for the useful half cycle, after it the opening time. The
    trip current scatters from one operation to the next.
    """
    scatter = DISTURBED if disturbed else REPEATS
    extra = unit.first_extra if attempt.first else unit.later_extra
    probability = below((overcurrent - 1.0) / scatter) if overcurrent < 6.0 else 1.0
    if probability < 1e-6 or extra == inf:
        return NEVER
    over = max(overcurrent, 1.0 + scatter)
    lag = unit.smooth_lag if attempt.waveform == Waveform.SMOOTH_DC else unit.lag
    wait, wait_spread = _wait(unit.waits, attempt.start)
    mean = unit.opening + lag * log(over / (over - 1.0)) + wait + extra
    steep = lag * scatter / (over - 1.0)
    sticking = STICKING_SCATTER * extra
    variance = TIME_REPEATS**2 + steep * steep + wait_spread * wait_spread + sticking * sticking
    if disturbed:
        mean += HELD_BACK
        variance += HELD_BACK_VARIANCE
    return Trip(probability, mean, sqrt(variance))


def side_of(start: str) -> str:
    """Return the side on which a test starts: 0, 180, or nothing where it is not given."""
    return {"0": "0", "+": "0", "180": "180", "-": "180"}.get(start, "")


def _wait(waits: float, start: str) -> tuple[float, float]:
    """Return mean and spread [ms] of the wait for the useful half cycle."""
    side = side_of(start)
    if side == "0":
        return max(waits, 0.0), 0.0
    if side == "180":
        return max(-waits, 0.0), 0.0
    return abs(waits) / 2.0, abs(waits) / 2.0
