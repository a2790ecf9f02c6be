"""Smooth DC put through a sensing core on purpose: turns of a wire, a resistor and a source.

Ampère: a wire that passes through the core n times with a current I magnetises it as a residual
current of n times I would. Ohm and Joule give the resistor.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, log, log10

from checkers.physics.core.injection_rules import INJECTION


@dataclass(frozen=True, slots=True)
class Injection:
    """A source [V], the turns of its wire through the core, and the residual DC wanted [mA]."""

    supply_voltage: float
    turns: int
    dc_wanted: float

    @property
    def resistance(self) -> float:
        """The resistance that gives exactly the DC wanted [ohm]."""
        return 1000.0 * self.supply_voltage * self.turns / self.dc_wanted

    @property
    def standard_value(self) -> float:
        """The preferred value nearest to it [ohm]."""
        return nearest_preferred(self.resistance)

    @property
    def loading(self) -> float:
        """The resistance that the wire puts across the core, seen from one turn [ohm]."""
        return self.standard_value / self.turns**2

    @property
    def current(self) -> float:
        """The current in the wire with that resistor [mA]."""
        return 1000.0 * self.supply_voltage / self.standard_value

    @property
    def dc_residual(self) -> float:
        """The residual DC that the core then sees [mA]."""
        return self.turns * self.current

    @property
    def dc_residual_range(self) -> tuple[float, float]:
        """The same for a resistor at either end of its tolerance [mA]."""
        share = INJECTION.tolerance
        return self.dc_residual / (1.0 + share), self.dc_residual / (1.0 - share)

    @property
    def power(self) -> float:
        """The heat in the resistor [W]."""
        return self.supply_voltage**2 / self.standard_value

    @property
    def power_rating(self) -> float | None:
        """The least rating made that leaves the margin [W], or None where none does."""
        wanted = self.power * INJECTION.margin.value
        return next((one for one in INJECTION.power_ratings if one >= wanted), None)

    @property
    def current_limit(self) -> float:
        """What the source's current limit is set to [mA]."""
        return self.current * INJECTION.current_limit.value


def nearest_preferred(resistance: float) -> float:
    """Return the preferred value nearest to a resistance in ratio [ohm].

    Assumes the series E24 of IEC 60063 in every decade.
    """
    decade = floor(log10(resistance)) - 1
    values = [*INJECTION.preferred_values, 10.0 * INJECTION.preferred_values[0]]
    candidates = [_shifted(value, decade) for value in values]
    return min(candidates, key=lambda value: abs(log(value / resistance)))


def _shifted(value: float, decade: int) -> float:
    """Return a value moved by decades, without the dust of binary fractions."""
    return value * 10.0**decade if decade >= 0 else value / 10.0**-decade
