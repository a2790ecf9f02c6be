"""What of a test current the device sees."""

from __future__ import annotations

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.physics.condition.state import Surroundings
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.seen_current import Mixed, mixed_in, needed, seen

LEAKY = Surroundings(loads_on=True, at_board=False, leakage=10.0, leakage_cosine=0.0)
LINKED = Surroundings(True, False, 0.0, 0.0, shunted=0.6, board_part=0.5)


def attempt(place: str = "unknown", loads: str = "unknown") -> Attempt:
    """Return a trip time at the rating, at a place and with loads."""
    return Attempt("trip-time", 30.0, 30.0, place=place, loads=loads)


@given(st.floats(0.05, 1.0), st.floats(-10.0, 10.0), st.floats(0.0, 10.0), st.floats(15.0, 100.0))
def test_the_current_needed_is_the_one_that_is_seen_as_the_trip_current(
    share: float, along: float, across: float, level: float
) -> None:
    """What is needed, once it flows, makes the device see its trip current."""
    mixed = Mixed(share, along, across, 1.0, disturbs=False)

    assert seen(mixed, needed(mixed, level)) == pytest.approx(level)


def test_nothing_is_needed_where_the_leakage_alone_would_do() -> None:
    """Leakage above the trip current leaves nothing to add."""
    assert needed(Mixed(1.0, 30.0, 0.0, 1.0, disturbs=False), 22.0) == 0.0


def test_no_current_is_enough_where_none_can_flow() -> None:
    """Without a way back to the source the device sees nothing."""
    assert needed(Mixed(0.0, 0.0, 0.0, 1.0, disturbs=False), 22.0) == inf


def test_leakage_flows_with_the_loads_on_and_only_then() -> None:
    """Loads off, or a test at the device alone, take the leakage away."""
    assert mixed_in(LEAKY, attempt(loads="on")).across == 10.0
    assert mixed_in(LEAKY, attempt(loads="off")).across == 0.0
    assert mixed_in(LEAKY, attempt(place="device", loads="on")).across == 0.0


def test_a_neutral_to_earth_path_takes_most_at_the_socket_and_nothing_at_the_device() -> None:
    """The share seen falls from the device to the board to the socket-outlet."""
    shares = [mixed_in(LINKED, attempt(place)).share for place in ("device", "board", "point")]

    assert shares == pytest.approx([1.0, 0.7, 0.4])
