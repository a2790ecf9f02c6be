"""Types that sense smooth DC on their own."""

from __future__ import annotations

import pytest

from checkers.physics.core.dc_sensing import DcOpening, trip_while_sensing_dc
from checkers.physics.core.trip_band import TripBand

OWN = TripBand.exactly(24.0)
OPENING = DcOpening(may_from=15.0, must_at=60.0)


@pytest.mark.parametrize("dc", [0.0, 6.0, 12.0, 14.9])
def test_dc_that_cannot_open_it_leaves_the_trip_current_alone(dc: float) -> None:
    """Below half the rating in DC, the AC trip current is no higher than without."""
    trip = trip_while_sensing_dc(OWN, dc, OPENING)

    assert (trip.typical, trip.high) == (24.0, 24.0)
    assert 0.0 < trip.low <= 24.0


@pytest.mark.parametrize("dc", [15.0, 30.0, 59.9])
def test_between_may_and_must_the_dc_alone_may_open_it(dc: float) -> None:
    """The low figure is zero: no AC may be needed at all."""
    assert trip_while_sensing_dc(OWN, dc, OPENING).low == 0.0


@pytest.mark.parametrize("dc", [60.0, 250.0])
def test_from_twice_the_rating_the_dc_alone_opens_it(dc: float) -> None:
    """No such DC can stand: the device has opened, and needs no AC."""
    assert trip_while_sensing_dc(OWN, dc, OPENING) == TripBand.exactly(0.0)
