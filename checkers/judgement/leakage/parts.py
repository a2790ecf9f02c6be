"""Standing leakage as a phasor: capacitive and resistive parts, and a part of unknown angle."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from checkers.domain.inputs.fields import Labelled

NOISE = 1e-9


class Nature(Labelled):
    """What lets a leakage flow, which decides its angle to the voltage."""

    UNKNOWN = "unknown", "not known"
    CAPACITIVE = "capacitive", "filters, cables, panels"
    RESISTIVE = "resistive", "insulation, heating elements"


@dataclass(frozen=True, slots=True)
class Leakage:
    """A leakage current on one line [mA r.m.s.], by nature."""

    capacitive: float = 0.0
    resistive: float = 0.0
    unknown: float = 0.0

    @property
    def total(self) -> float:
        """The greatest current that the parts make together [mA].

        Capacitive current leads resistive current by a quarter period, so that they add as
        the sides of a right angle. A part of unknown angle is added in full: the worst case.
        """
        return hypot(self.capacitive, self.resistive) + self.unknown

    def __add__(self, other: Leakage) -> Leakage:
        return Leakage(
            self.capacitive + other.capacitive,
            self.resistive + other.resistive,
            self.unknown + other.unknown,
        )

    def times(self, count: float) -> Leakage:
        """Return the leakage of so many alike."""
        return Leakage(self.capacitive * count, self.resistive * count, self.unknown * count)

    def fits(self, budget: float) -> bool:
        """Tell whether the total is within a budget [mA]."""
        return self.total <= budget + NOISE


NO_LEAKAGE = Leakage()


def leakage_of(current: float, nature: str) -> Leakage:
    """Return a current [mA] as a leakage of a nature."""
    return Leakage(**{nature: current})


def how_many_fit(onto: Leakage, each: Leakage, budget: float, most: int) -> int:
    """Return how many alike may be added to a leakage within a budget [mA], at most `most`.

    The total grows with every one added, so the last that fits is found by halving.
    """
    low, high = 0, most + 1
    if not onto.fits(budget):
        return 0
    while high - low > 1:
        middle = (low + high) // 2
        if (onto + each.times(middle)).fits(budget):
            low = middle
        else:
            high = middle
    return low
