"""By how much smooth DC raises a device's trip current: the core model, read off quickly."""

from __future__ import annotations

from bisect import bisect_left
from functools import lru_cache
from math import inf, sqrt

from checkers.domain.device.device import SENSES_SMOOTH_DC
from checkers.physics.core.parameters import CORE, CoreData, Scatter
from checkers.physics.core.trip_under_bias import peaks_to_trip
from checkers.physics.scatter import SCATTER

# Smooth DC over the own trip current, where the core model is asked.
BIASES = (0.0, 0.1, 0.2, 0.4, 0.6, 0.9, 1.3, 2.0, 3.0, 4.5, 7.0, 10.0, 20.0, 60.0, 150.0)


def dc_shift(device_type: str, rated: float, over_own: float, standing: float) -> float:
    """Return the factor by which smooth DC multiplies a device's trip current.

    Inputs: its type and rating [mA]; the DC over its own trip current [no unit]; where
    it stands among the cores of its type, from 0, harmed least, to 1, harmed most.
    Assumptions: straight lines between the points the core model gives; a type that
    senses smooth DC is not shifted.
    """
    if device_type in SENSES_SMOOTH_DC or over_own <= 0.0:
        return 1.0
    typical, least, most = _curves(device_type, rated)
    middle = _read_off(typical, over_own)
    edge = _read_off(most if standing > 0.5 else least, over_own)
    return middle + (edge - middle) * abs(2.0 * standing - 1.0)


def blinding_dc(device_type: str, rated: float) -> float:
    """Return the DC over the own trip current from which a typical device is blinded."""
    if device_type in SENSES_SMOOTH_DC:
        return inf
    typical = _curves(device_type, rated)[0]
    wanted = SCATTER.blinding_shift.typical
    place = next(at for at, shift in enumerate(typical) if shift >= wanted)
    low, high = typical[place - 1], typical[place]
    part = (wanted - low) / (high - low)
    return BIASES[place - 1] + part * (BIASES[place] - BIASES[place - 1])


@lru_cache(maxsize=64)
def _curves(device_type: str, rated: float) -> tuple[tuple[float, ...], ...]:
    """Return the shift at each bias for a typical core, the least and the most harmed."""
    own = rated * SCATTER.own_trip_share.typical
    biases = tuple(bias / sqrt(2.0) for bias in BIASES)
    return tuple(
        _curve(CORE.cores[device_type, scatter], own, rated, biases) for scatter in Scatter
    )


def _curve(
    data: CoreData, own: float, rated: float, biases: tuple[float, ...]
) -> tuple[float, ...]:
    return tuple(data.harmed(1.0, one) for one in peaks_to_trip(data.scaled(own, rated), biases))


def _read_off(curve: tuple[float, ...], bias: float) -> float:
    place = min(max(bisect_left(BIASES, bias), 1), len(BIASES) - 1)
    left, right = BIASES[place - 1], BIASES[place]
    part = (bias - left) / (right - left)
    return curve[place - 1] + part * (curve[place] - curve[place - 1])
