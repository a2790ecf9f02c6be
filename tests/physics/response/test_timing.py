"""How long a device takes at an overcurrent."""

from __future__ import annotations

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.physics.condition.state import Unit
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.timing import below, trip

UNIT = Unit(
    rated=30.0,
    type="A",
    own=22.0,
    half_wave=1.0,
    opening=12.0,
    lag=18.0,
    waits=8.0,
    button_current=60.0,
)
AT_0 = Attempt("trip-time", 30.0, 30.0, start="0")
AT_180 = Attempt("trip-time", 30.0, 30.0, start="180")


@given(st.floats(1.2, 50.0), st.floats(1.01, 2.0))
def test_more_current_never_makes_a_device_slower(overcurrent: float, factor: float) -> None:
    """The mean time falls as the overcurrent rises."""
    slow = trip(UNIT, overcurrent, AT_0, disturbed=False)
    fast = trip(UNIT, overcurrent * factor, AT_0, disturbed=False)

    assert fast.mean <= slow.mean


@given(st.floats(0.0, 50.0))
def test_a_chance_stays_a_chance(overcurrent: float) -> None:
    """Whatever flows, the probability lies between 0 and 1 and the spread is positive."""
    found = trip(UNIT, overcurrent, AT_0, disturbed=True)

    assert 0.0 <= found.probability <= 1.0
    assert found.spread > 0.0


def test_the_two_starts_differ_by_the_wait_for_the_useful_half_cycle() -> None:
    """A start on the wrong half cycle adds the wait and nothing else."""
    apart = (
        trip(UNIT, 3.0, AT_0, disturbed=False).mean - trip(UNIT, 3.0, AT_180, disturbed=False).mean
    )

    assert apart == pytest.approx(UNIT.waits)


def test_well_below_the_trip_current_nothing_trips() -> None:
    """At half the trip current the device holds."""
    assert trip(UNIT, 0.5, AT_0, disturbed=False).probability == 0.0


def test_a_stuck_mechanism_never_trips() -> None:
    """An infinite extra time is no trip, whatever the current."""
    stuck = Unit(30.0, "A", 22.0, 1.0, 12.0, 18.0, 8.0, 60.0, first_extra=inf, later_extra=0.0)
    first = Attempt("trip-time", 30.0, 30.0, first=True)

    assert trip(stuck, 9.0, first, disturbed=False).probability == 0.0
    assert trip(stuck, 9.0, AT_0, disturbed=False).probability == 1.0


def test_half_of_a_normal_distribution_lies_below_its_mean() -> None:
    """The share below is that of the standard normal distribution."""
    assert below(0.0) == 0.5
