"""Types that sense smooth DC on their own: a sensor whose core is driven through saturation.

An exciting current swings the core of such a sensor from one saturation to the other, many
times in a mains cycle, and the evaluating circuit reads the direct and the slow alternating
residual current from where it sits, or drives a current that cancels it. The core cannot be
held in saturation, so DC does not hide AC. The DC itself opens the device before it grows large.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from checkers.physics.core.trip_band import TripBand


@dataclass(frozen=True, slots=True)
class DcOpening:
    """The smooth DC from which a device may, and at which it must, open by itself [mA]."""

    may_from: float
    must_at: float


def trip_while_sensing_dc(own: TripBand, dc: float, opening: DcOpening) -> TripBand:
    """Return the AC trip current while smooth DC flows, for a type that senses DC.

    Inputs: the own trip current without DC [mA]; the DC [mA]; where the DC alone opens the
    device. Result [mA]: 0 means that no AC is needed, the DC alone opens it.
    Assumes, for the high and the typical figure, separate evaluation of AC and DC; for the low
    one a circuit that adds both by their squares and opens at the least DC allowed.
    """
    if dc >= opening.must_at:
        return TripBand.exactly(0.0)
    used = min(1.0, dc / opening.may_from)
    return TripBand(own.typical, own.low * sqrt(1.0 - used * used), own.high)
