"""Student's t distribution for whole degrees of freedom, which the standard library lacks."""

from __future__ import annotations

from functools import lru_cache
from math import atan, cos, inf, pi, sin, sqrt
from statistics import NormalDist

HALVINGS = 80


@lru_cache(maxsize=256)
def coverage_factor(probability: float, freedom: float) -> float:
    """Return the factor k with which a value lies within k standard deviations of its mean.

    Inputs: the two-sided probability, from 0 to 1; the degrees of freedom, whole, or infinite
    where the standard deviation is known.
    Result: k [no unit], found by halving.
    """
    if freedom == inf:
        return NormalDist().inv_cdf((1 + probability) / 2)
    low, high = 0.0, 1.0
    while within(high, int(freedom)) < probability:
        high *= 2
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if within(middle, int(freedom)) < probability else (low, middle)
    return high


def within(factor: float, freedom: int) -> float:
    """Return the probability that |t| is at most a factor, for whole degrees of freedom.

    Source: [1] M. Abramowitz, I. Stegun, Handbook of Mathematical Functions (1964), 26.7.3 and
    26.7.4 (from memory; checked against SciPy in the tests).
    """
    angle = atan(factor / sqrt(freedom))
    square = cos(angle) ** 2
    odd = freedom % 2
    term = cos(angle) if odd else 1.0
    total = 0.0
    for step in range(1 + odd, freedom, 2):
        total += term
        term *= square * step / (step + 1)
    if odd:
        return 2 / pi * (angle + sin(angle) * total)
    return sin(angle) * total
