"""A trip current with its uncertainty, and where a device's own one lies without DC."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Self

from checkers.physics.core.parameters import CORE
from checkers.physics.scatter import SCATTER


@dataclass(frozen=True, slots=True)
class TripBand:
    """A trip current: a typical figure, and what devices of the type spread over [mA r.m.s.].

    The spread is judgement over cores and relays, no confidence interval.
    """

    typical: float
    low: float
    high: float

    @classmethod
    def measured(cls, current: float) -> Self:
        """Return the band of a trip current that was measured [mA]: a device repeats it so well."""
        repeats = SCATTER.trip_current_repeats.typical
        return cls(current, current * (1.0 - repeats), current * (1.0 + repeats))

    @classmethod
    def exactly(cls, current: float) -> Self:
        """Return the band of a trip current that is a single figure [mA]."""
        return cls(current, current, current)


def own_trip_band(rated: float) -> TripBand:
    """Return where a sound device's own trip current lies, from its rating [mA]."""
    own = CORE.own_trip_current
    return TripBand(own.of("typical", rated), own.of("least", rated), own.of("most", rated))
