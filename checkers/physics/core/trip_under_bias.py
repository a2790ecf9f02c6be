"""The alternating current that opens a device while smooth DC magnetises its core."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from math import inf

from checkers.physics.core.primary_current import Shape
from checkers.physics.core.sensing_core import Core, settled_cycle, signal_at_own_trip

CLOSE_ENOUGH = 1e-3  # of the peak looked for
MOST_STEPS = 60
WIDER = 1.35  # how fast the search widens
BEYOND = 1e6  # a peak so many times the own trip current never comes


@lru_cache(maxsize=2048)
def peak_to_trip(
    core: Core, bias: float, shape: Shape = Shape.SINE, expected: float | None = None
) -> float:
    """Return the peak of the alternating part that opens the device, or infinity for none.

    Inputs: the core; the smooth DC, in peaks of the own trip current; the shape; the peak
    expected, which only shortens the search.
    Result: in peaks of the own trip current. Infinity where no current of this shape gives the
    relay its signal: a half wave on a core that holds its flux, for one.
    """
    wanted = signal_at_own_trip(core)

    def surplus(peak: float) -> float:
        return settled_cycle(core, bias, peak, shape).signal(core.relay) - wanted

    guess = expected if expected is not None else bias + 1.0
    return _crossing(surplus, guess)


@lru_cache(maxsize=256)
def peaks_to_trip(core: Core, biases: tuple[float, ...]) -> tuple[float, ...]:
    """Return the peak that opens the device for each smooth DC, as peak_to_trip does.

    Inputs: the core; smooth DC in rising order. Each answer guides the search for the next.
    """
    points: list[tuple[float, float]] = []
    for bias in biases:
        points.append((bias, peak_to_trip(core, bias, expected=_carried_on(points, bias))))
    return tuple(peak for _, peak in points)


def _carried_on(points: list[tuple[float, float]], bias: float) -> float:
    """Return where a straight line through the last two points leads."""
    if len(points) < 2:
        return bias + 1.0
    (before, low), (last, high) = points[-2:]
    return high + (high - low) / (last - before) * (bias - last)


def _crossing(surplus: Callable[[float], float], guess: float) -> float:
    """Return the peak at which the surplus crosses zero, rising; infinity where it never does."""
    low, high = guess * 0.97, guess * 1.03
    under, over = surplus(low), surplus(high)
    widen = WIDER
    while over < 0.0:
        low, under, high = high, over, high * widen
        if high > BEYOND:
            return inf
        over, widen = surplus(high), widen * WIDER
    while under > 0.0:
        high, over, low = low, under, low / widen
        if low < 1e-6:
            return 0.0
        under, widen = surplus(low), widen * WIDER
    return _false_position(surplus, (low, under), (high, over))


def _false_position(
    surplus: Callable[[float], float], below: tuple[float, float], above: tuple[float, float]
) -> float:
    """Close in on a crossing between two peaks (regula falsi, Illinois variant)."""
    (low, under), (high, over) = below, above
    side = 0
    for _ in range(MOST_STEPS):
        if high - low <= CLOSE_ENOUGH * high:
            break
        peak = (low * over - high * under) / (over - under)
        found = surplus(peak)
        if abs(found) < 1e-9:
            return peak
        if found > 0.0:
            high, over = peak, found
            under = under / 2.0 if side > 0 else under
            side = 1
        else:
            low, under = peak, found
            over = over / 2.0 if side < 0 else over
            side = -1
    return (low * over - high * under) / (over - under)
