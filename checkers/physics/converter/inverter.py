"""The switching of an inverter's output leg: which pole of the link it is on, step by step."""

from __future__ import annotations

from math import pi, sin

from checkers.physics.converter.circuits import Parts


def leg_positions(parts: Parts, cycles: int) -> list[int]:
    """Return 1 where the output is on the upper pole and 0 where on the lower, for each step.

    Inputs: the parts, which give motor and switching frequency in mains frequencies and the
    share of the link that is used; whole mains cycles. Pulse width modulation, sampled once a
    carrier period, pulse in its middle. A pulse is a whole number of steps; what is cut off is
    carried over to the next pulse, so that the mean is exact.
    """
    period = parts.steps_per_cycle // parts.carrier_ratio
    positions: list[int] = []
    owed = 0.0
    for carrier in range(cycles * parts.carrier_ratio):
        motor_angle = 2.0 * pi * parts.motor_ratio * (carrier + 0.5) / parts.carrier_ratio
        width = period * (0.5 + 0.5 * parts.modulation * sin(motor_angle)) + owed
        high = min(max(round(width), 0), period)
        owed = width - high
        before = (period - high) // 2
        positions += [0] * before + [1] * high + [0] * (period - high - before)
    return positions
