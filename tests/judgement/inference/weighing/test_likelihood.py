"""Bounds and words are used as such, and what was seen counts."""

from __future__ import annotations

from math import exp

import pytest

from checkers.domain.quantities.measured_value import parse_measured
from checkers.judgement.inference.weighing.likelihood import log_likelihoods, log_likelihoods_seen
from checkers.judgement.inference.weighing.samples import Columns
from checkers.physics.response.attempt import Attempt

TIME = Attempt("trip-time", 30.0, 30.0)
BUTTON = Attempt("button", 30.0, 0.0)
TRIPS = Columns([1.0], [30.0], [3.0], [1.0], [0.0])
HOLDS = Columns([0.0], [0.0], [1.0], [1.0], [0.0])
RAN_ON = Columns([0.1], [30.0], [3.0], [1.0], [0.9])
ANOTHER = Columns([1.0], [30.0], [3.0], [0.0], [0.0])


def likelihood(columns: Columns, value: str, attempt: Attempt = TIME) -> float:
    """Return how likely a reading is for the one member of a cloud."""
    return exp(log_likelihoods(columns, attempt, parse_measured(value, "trip_time"))[0])


@pytest.mark.parametrize("value", ["> 300 ms", "no trip", "> 40 ms"])
def test_a_device_that_holds_explains_every_way_of_saying_so(value: str) -> None:
    """No trip and a bound are certain for it, and nearly impossible for one that trips."""
    assert likelihood(HOLDS, value) > 0.99
    assert likelihood(TRIPS, value) < 0.01


@pytest.mark.parametrize("value", ["tripped", "< 40 ms"])
def test_a_device_that_trips_explains_every_way_of_saying_so(value: str) -> None:
    """A word and a bound from above are certain for it."""
    assert likelihood(TRIPS, value) > 0.99
    assert likelihood(HOLDS, value) < 0.01


def test_a_bound_says_less_than_a_figure() -> None:
    """Two devices alike to a bound differ to a figure."""
    slower = Columns([1.0], [36.0], [3.0], [1.0], [0.0])

    assert likelihood(TRIPS, "< 60 ms") == pytest.approx(likelihood(slower, "< 60 ms"))
    assert likelihood(TRIPS, "30 ms") > 5 * likelihood(slower, "30 ms")


def test_no_reading_is_impossible() -> None:
    """A freak can show anything, so one misreading never rules a cause out."""
    assert likelihood(HOLDS, "30 ms") > 0.0


def test_the_button_is_a_word() -> None:
    """It operates, or it does not."""
    assert likelihood(TRIPS, "operates", BUTTON) > 0.99
    assert likelihood(HOLDS, "does not operate", BUTTON) > 0.99


def test_being_seen_to_open_speaks_for_a_timer_that_ran_on() -> None:
    """Where nothing was shown, only a device that opened unseen by the timer explains it."""
    ran_on = log_likelihoods_seen([(RAN_ON, False)], seen_to_open=True)
    held = log_likelihoods_seen([(HOLDS, False)], seen_to_open=True)

    assert ran_on[0] - held[0] > 4.0


def test_not_being_seen_to_open_speaks_for_another_device() -> None:
    """A time was shown, but this device stayed closed."""
    another = log_likelihoods_seen([(ANOTHER, True)], seen_to_open=False)
    own = log_likelihoods_seen([(TRIPS, True)], seen_to_open=False)

    assert another[0] - own[0] > 4.0


def test_a_trip_that_was_shown_says_nothing_more_when_it_is_seen() -> None:
    """Seeing what the timer showed adds nothing."""
    shown = log_likelihoods_seen([(TRIPS, True)], seen_to_open=True)

    assert exp(shown[0]) > 0.99


@pytest.mark.parametrize(
    ("opens", "shown", "seen_to_open", "chance"),
    [
        (0.25, True, False, 0.725),  # closed in 0.75: 0.95 × 0.75 + 0.05 × 0.25
        (0.25, True, True, 0.275),  # open in 0.25: 0.95 × 0.25 + 0.05 × 0.75
        (0.25, False, True, 0.275),
        (0.0, True, True, 0.05),
        (1.0, False, False, 0.05),
    ],
)
def test_eyes_that_err_once_in_twenty_leave_so_much(
    opens: float, shown: bool, seen_to_open: bool, chance: float
) -> None:
    """Seen rightly in 19 of 20, wrongly in one: the rule of total probability."""
    one = Columns([float(shown)], [30.0], [3.0], [opens], [opens])
    found = log_likelihoods_seen([(one, shown)], seen_to_open=seen_to_open, missed=0.05)

    assert exp(found[0]) == pytest.approx(chance)
