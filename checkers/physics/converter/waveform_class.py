"""The class of a residual current, and the device type that is built to see it.

A fault grows: what is a small current today is a large one of the same shape tomorrow. So the
class is judged as if the fault were the reference of the data, 1 kohm, at which 6 mA stand for
6 V. Otherwise any current that is small enough would count as "at or under 6 mA" all the time.
"""

from __future__ import annotations

from enum import StrEnum

from checkers.physics.converter.circuits import BOUNDS, Bounds
from checkers.physics.converter.waveform_values import WaveformValues


class WaveformClass(StrEnum):
    """What sort of residual current it is."""

    SINUSOIDAL = "sinusoidal"
    PULSATING = "pulsating"
    COMPOSITE = "composite"
    RIPPLED = "rippled"
    SMOOTH = "smooth"

    @property
    def meaning(self) -> str:
        """The class in words."""
        return _MEANINGS[self]


_MEANINGS = {
    WaveformClass.SINUSOIDAL: "alternating at the mains frequency, whole or chopped",
    WaveformClass.PULSATING: "pulsating direct, all but nothing for 150 degrees or more",
    WaveformClass.COMPOSITE: "mains, motor and switching frequencies mixed",
    WaveformClass.RIPPLED: "direct with ripple that does not rest long enough to be pulsating",
    WaveformClass.SMOOTH: "smooth direct, ripple under 10 per cent",
}

TYPES = ("AC", "A", "F", "B")


def classify(
    figures: WaveformValues, fault_resistance: float, bounds: Bounds = BOUNDS
) -> WaveformClass:
    """Return the class of a residual current.

    Inputs: its figures; the fault resistance it was found with [ohm]; the bounds.
    """
    rms = figures.rms or 1.0
    switching = figures.switching(bounds.switching_from) / rms
    between = figures.between_harmonics(bounds.switching_from) / rms
    if switching > bounds.switching_share and between > bounds.between_share:
        return WaveformClass.COMPOSITE
    if figures.direct_share < bounds.direct_share:
        return WaveformClass.SINUSOIDAL
    if figures.ripple < bounds.smooth_ripple:
        return WaveformClass.SMOOTH
    low_current = bounds.low_current * bounds.reference_fault / fault_resistance
    if figures.low_interval_of_each_period(low_current) >= bounds.low_interval:
        return WaveformClass.PULSATING
    return WaveformClass.RIPPLED


def least_type(
    found: WaveformClass, figures: WaveformValues, fault_resistance: float, bounds: Bounds = BOUNDS
) -> str:
    """Return the least device type built to see a residual current of a class.

    A type F is tested with mains, motor and switching frequency together and up to 10 mA of
    smooth DC: a composite current without a mains part, or with more DC, needs a type B.
    """
    if found is WaveformClass.COMPOSITE:
        most_dc = bounds.composite_dc * bounds.reference_fault / fault_resistance
        has_mains = figures.mains() > bounds.mains_share * figures.rms
        return "F" if has_mains and abs(figures.average) <= most_dc else "B"
    return {WaveformClass.SINUSOIDAL: "AC", WaveformClass.PULSATING: "A"}.get(found, "B")
