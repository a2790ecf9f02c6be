"""The sensing core of a device: residual current magnetises it, its flux drives the relay.

The unit of field is the peak of the ampere-turns of the device's own trip current, so that a
core of any rating is described by the same few shares. By Ampère's law the field is ampere-turns
over the length of the core; two cores whose ampere-turns stand in the same ratio to their knee
and coercive field go through the same loop, whatever their size.

The relay hangs on the secondary winding. Current that the changing flux drives through it
opposes the change (the drag of magnetic_material); the relay opens the device once its signal
is as great as it is at the own trip current.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from checkers.physics.core.magnetic_material import Material, next_flux
from checkers.physics.core.primary_current import Shape, crowding_for, steps_of

SETTLED = 2e-4  # change of flux from cycle to cycle, of saturation
MOST_CYCLES = 60


class Relay(StrEnum):
    """What of the flux the relay answers to."""

    FLUX_SWING = "flux-swing"
    BOTH_PULSES = "both-pulses"
    HELPED_PULSE = "helped-pulse"
    HINDERED_PULSE = "hindered-pulse"


@dataclass(frozen=True, slots=True)
class Core:
    """A core with its burden and relay; fields in peaks of the own trip current.

    `knee`: field at half saturation. `coercive`: coercive field. `burden`: field that opposes
    the flux, for a change of one saturation in one radian of the mains cycle.
    """

    knee: float
    coercive: float
    burden: float
    relay: Relay


@dataclass(frozen=True, slots=True)
class Cycle:
    """What a settled cycle does to the flux: its swing, and its fastest rise and fall.

    The swing is in units of saturation, rise and fall in saturations a radian.
    """

    swing: float
    rise: float
    fall: float

    def signal(self, relay: Relay) -> float:
        """Return what the relay is given, in the unit of its own measure."""
        if relay is Relay.FLUX_SWING:
            return self.swing
        if relay is Relay.BOTH_PULSES:
            return self.rise + self.fall
        return self.rise if relay is Relay.HELPED_PULSE else self.fall


def settled_cycle(core: Core, bias: float, peak: float, shape: Shape = Shape.SINE) -> Cycle:
    """Return what the flux does in a mains cycle, once every cycle is like the one before.

    Inputs: the core; the smooth DC and the peak of the alternating part, both in peaks of the
    own trip current; the shape of the alternating part.
    Assumes DC of the positive direction; the other one is the mirror image.
    """
    crowding = crowding_for(bias) if shape is Shape.SINE else 1.0
    drive = [
        (bias + peak * value, core.burden / length) for value, length in steps_of(shape, crowding)
    ]
    material = Material(core.knee, core.coercive)
    flux = 0.0
    for _ in range(MOST_CYCLES):
        before = flux
        flux, cycle = _one_cycle(flux, drive, core.burden, material)
        if abs(flux - before) < SETTLED:
            break
    return cycle


def _one_cycle(
    flux: float, drive: list[tuple[float, float]], burden: float, material: Material
) -> tuple[float, Cycle]:
    """Return the flux after a cycle, and what happened in it."""
    low = high = flux
    rise = fall = 0.0
    for field, drag in drive:
        after = next_flux(flux, field, drag, material)
        if after != flux:
            pulse = (after - flux) * drag
            rise, fall = max(rise, pulse), max(fall, -pulse)
            low, high = min(low, after), max(high, after)
            flux = after
    return flux, Cycle(high - low, rise / burden, fall / burden)


@lru_cache(maxsize=512)
def signal_at_own_trip(core: Core) -> float:
    """Return the relay's signal at the own trip current without DC: what it needs to open."""
    return settled_cycle(core, 0.0, 1.0).signal(core.relay)
