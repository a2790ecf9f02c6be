"""The residual current through the core as a list of short steps over one mains cycle."""

from __future__ import annotations

from enum import StrEnum
from functools import lru_cache
from itertools import pairwise
from math import cos, pi, sqrt

STEPS = 96  # in each cycle: a trip current within 1 % of one with thirty times as many

Steps = tuple[tuple[float, float], ...]


class Shape(StrEnum):
    """The shape of the alternating part."""

    SINE = "ac"
    HALF_WAVE = "half-wave"
    NEGATIVE_HALF_WAVE = "half-wave negative"


def rms_of(shape: Shape, peak: float) -> float:
    """Return the r.m.s. value of a shape of this peak [same unit]: peak/√2, or peak/2."""
    return peak / sqrt(2.0) if shape is Shape.SINE else peak / 2.0


@lru_cache(maxsize=256)
def steps_of(shape: Shape, crowding: float) -> Steps:
    """Return (value for a peak of 1, length [rad]) for each step of a cycle.

    Inputs: the shape; the crowding, 1 for equal steps, and less to crowd them round the
    negative crest. With much DC in the core, that is the only moment at which its flux moves.
    The cycle starts at the positive crest.
    """
    places = [2.0 * number / STEPS - 1.0 for number in range(STEPS + 1)]
    angles = [pi * (crowding * place + (1.0 - crowding) * place**3) for place in places]
    return tuple(
        (_value(shape, (start + end) / 2.0), end - start) for start, end in pairwise(angles)
    )


def crowding_for(bias: float) -> float:
    """Return the crowding that suits a DC bias, as a multiple of the own trip current's peak."""
    return round(1.0 / sqrt(1.0 + bias / 2.0), 2)


def _value(shape: Shape, angle: float) -> float:
    sine = -cos(angle)
    if shape is Shape.HALF_WAVE:
        return max(0.0, sine)
    if shape is Shape.NEGATIVE_HALF_WAVE:
        return min(0.0, sine)
    return sine
