"""Whether the test button still operates a device while smooth DC flows through it."""

from __future__ import annotations

from enum import StrEnum

from checkers.physics.core.parameters import CORE
from checkers.physics.core.trip_band import TripBand


class ButtonOperates(StrEnum):
    """Whether pressing the button would open the device."""

    YES = "yes"
    NO = "no"
    CANNOT_SAY = "cannot say"


def greatest_button_current(rated: float) -> float:
    """Return the greatest current [mA] a button may drive, for a rated residual current [mA]."""
    return CORE.button.of("greatest", rated)


def button_operates(trip: TripBand, rated: float) -> ButtonOperates:
    """Tell whether the button operates a device, from its AC trip current under DC.

    Inputs: the trip current [mA], the rated residual current [mA].
    Result: yes where the greatest button current is enough for a typical device, no where it is
    too little for the most sensitive one, otherwise it cannot be said. A yes is no sign of
    protection, so it need not hold for every device. Of a device that the DC alone has opened
    (trip current zero) nothing can be said.
    """
    if trip.high == 0.0:
        return ButtonOperates.CANNOT_SAY
    greatest = greatest_button_current(rated)
    if trip.low > greatest:
        return ButtonOperates.NO
    return ButtonOperates.YES if trip.typical <= greatest else ButtonOperates.CANNOT_SAY
