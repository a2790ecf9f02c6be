"""A device's trip current in mA under DC: scaling, spread and curve."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.physics.core.dc_sensing import DcOpening
from checkers.physics.core.device_under_bias import trip_band, trip_current, trip_curve
from checkers.physics.core.parameters import CORE, Scatter
from checkers.physics.core.trip_band import TripBand, own_trip_band

SATURATING = ["AC", "A", "F"]
OPENING = DcOpening(may_from=15.0, must_at=60.0)


@given(st.sampled_from(SATURATING), st.floats(3.0, 900.0), st.floats(0.0, 10000.0))
@settings(max_examples=60, deadline=None)
def test_the_band_holds_the_typical_figure_and_is_never_negative(
    device_type: str, own: float, dc: float
) -> None:
    """Low, typical and high stand in this order for any device and any DC."""
    band = trip_band(device_type, TripBand.exactly(own), dc)

    assert 0.0 < band.low <= band.typical <= band.high < 20.0 * (own + dc)


@pytest.mark.parametrize("device_type", SATURATING)
def test_without_dc_the_own_trip_current_stays(device_type: str) -> None:
    """No DC leaves a measured trip current as it was measured, as well as a device repeats it."""
    band = trip_band(device_type, TripBand.measured(22.0), 0.0)

    assert (band.typical, band.low, band.high) == pytest.approx((22.0, 21.34, 22.66), rel=2e-3)


def test_ampere_turns_scale() -> None:
    """Ten times the ampere-turns through a core ten times as large give ten times the answer."""
    small = trip_current(CORE.cores["AC", Scatter.TYPICAL], 27.0, 50.0)
    large = trip_current(CORE.cores["AC", Scatter.TYPICAL], 270.0, 500.0)

    assert large == pytest.approx(10.0 * small, rel=1e-6)


@pytest.mark.parametrize("device_type", SATURATING)
def test_much_dc_makes_every_device_less_sensitive(device_type: str) -> None:
    """From three times the trip current on, even the device that DC harms least is worse."""
    own = TripBand.exactly(27.0)
    lows = [trip_band(device_type, own, dc).low for dc in (81.0, 150.0, 300.0, 600.0)]

    assert lows[0] > 27.0
    assert lows == sorted(lows)


def test_a_little_dc_may_improve_the_sensitivity() -> None:
    """As seen in print, the band at 6 mA reaches below and above the trip current without DC."""
    band = trip_band("AC", TripBand.exactly(27.0), 6.0)

    assert band.low < 27.0 < band.high


def test_types_that_bear_more_dc_are_harmed_less() -> None:
    """At 50 mA of DC a type F needs less AC than a type A, and that less than a type AC."""
    own = TripBand.exactly(27.0)
    typical = [trip_band(device_type, own, 50.0).typical for device_type in ("F", "A", "AC")]

    assert typical == sorted(typical)


def test_an_unmeasured_trip_current_widens_the_band() -> None:
    """Known from the rating only, the trip current may lie between half of it and all of it."""
    known = trip_band("AC", TripBand.exactly(27.0), 50.0)
    assumed = trip_band("AC", own_trip_band(30.0), 50.0)

    assert assumed.low < known.low
    assert assumed.high > known.high


@pytest.mark.parametrize("device_type", SATURATING)
def test_the_curve_runs_through_the_single_answers(device_type: str) -> None:
    """Each point drawn is the answer for that DC, and the curve reaches as far as asked."""
    own = TripBand.exactly(27.0)
    points = trip_curve(device_type, own, 250.0)

    assert points[0].dc_residual == 0.0
    assert points[-1].dc_residual >= 250.0
    for point in points:
        alone = trip_band(device_type, own, point.dc_residual)
        drawn = point.trip
        assert (drawn.typical, drawn.low, drawn.high) == pytest.approx(
            (alone.typical, alone.low, alone.high), rel=4e-3
        )


def test_a_curve_of_a_type_that_senses_dc_ends_where_it_opens() -> None:
    """The last point is the DC at which the device opens by itself."""
    last = trip_curve("B", TripBand.exactly(27.0), 50.0, OPENING)[-1]

    assert (last.dc_residual, last.trip.high) == (60.0, 0.0)


def test_a_type_that_senses_dc_needs_to_say_where_it_opens() -> None:
    """Without its opening DC nothing can be answered for type B."""
    with pytest.raises(ValueError, match="type B"):
        trip_band("B", TripBand.exactly(27.0), 10.0)
