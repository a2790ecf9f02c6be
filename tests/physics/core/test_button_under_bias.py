"""The test button against the trip current under DC."""

from __future__ import annotations

import pytest

from checkers.physics.core.button_under_bias import (
    ButtonOperates,
    button_operates,
    greatest_button_current,
)
from checkers.physics.core.trip_band import TripBand


def test_a_button_may_drive_two_and_a_half_times_the_rating() -> None:
    """IEC 61008-1, test device (from memory): 75 mA for a rating of 30 mA."""
    assert greatest_button_current(30.0) == pytest.approx(75.0)


@pytest.mark.parametrize(
    ("trip", "answer"),
    [
        (TripBand(70.0, 50.0, 74.0), ButtonOperates.YES),
        (TripBand(75.0, 60.0, 90.0), ButtonOperates.YES),
        (TripBand(80.0, 60.0, 90.0), ButtonOperates.CANNOT_SAY),
        (TripBand(210.0, 180.0, 230.0), ButtonOperates.NO),
        (TripBand.exactly(0.0), ButtonOperates.CANNOT_SAY),
    ],
)
def test_the_button_is_judged_on_the_whole_band(trip: TripBand, answer: ButtonOperates) -> None:
    """Yes for a typical device, no where none would open, otherwise it cannot be said."""
    assert button_operates(trip, 30.0) is answer
