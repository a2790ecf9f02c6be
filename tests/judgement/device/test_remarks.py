"""A remark says more of a reading, and never changes how it is judged."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}


def time(value: str, phase: str = "0", multiple: int = 1) -> dict[str, Any]:
    """Return a trip time on AC."""
    return {
        "test": "trip-time",
        "multiple": multiple,
        "waveform": "ac",
        "phase": phase,
        "value": value,
    }


def reply(*readings: dict[str, Any], system: str = "unknown") -> dict[str, Any]:
    """Return the reply on some readings of a 30 mA type A device in the United Kingdom."""
    asked = {"code": "gb", "on": "2026-01-01", "device": DEVICE, "readings": readings}
    return run("readings", {**asked, "circuit": {"loads": "off", "system": system}})


def remarked(found: dict[str, Any], words: str) -> int:
    """Return how many findings say some words."""
    return sum(words in one["says"] for one in found["findings"])


@pytest.mark.parametrize(("other", "told"), [("38 ms", 0), ("38.1 ms", 1), ("73 ms", 1)])
def test_two_starts_apart_by_more_than_half_a_period_are_remarked(other: str, told: int) -> None:
    """Half a period is 10 ms at 50 Hz: the wait for the half cycle that trips it."""
    found = reply(time("28 ms"), time(other, "180"))

    assert remarked(found, "than from 0°") == told
    assert found["outcome"] == "pass"


def test_times_at_two_currents_are_not_compared_by_their_starts() -> None:
    """A time at five times is shorter for another reason."""
    assert not remarked(reply(time("60 ms"), time("20 ms", "180", 5)), "longer than from")


@pytest.mark.parametrize(
    ("value", "system", "told"),
    [
        ("250 ms", "tt", 1),
        ("250 ms", "tn", 0),
        ("250 ms", "unknown", 0),
        ("200 ms", "tt", 0),
    ],
)
def test_a_slow_time_at_the_rating_is_remarked_in_tt(value: str, system: str, told: int) -> None:
    """0.2 s for a final circuit in TT at 230 V (IEC 60364-4-41, Table 41.1); 0.3 s at the rating.

    The time at the rating stays what BS 7671 says of it: a fault gives a greater current.
    """
    found = reply(time(value), system=system)

    assert remarked(found, "In TT a final circuit") == told
    assert found["outcome"] == "pass"


def test_a_time_that_fails_gets_no_remark_of_tt() -> None:
    """Over 300 ms there is nothing to add."""
    found = reply(time("400 ms"), system="tt")

    assert found["outcome"] == "fail"
    assert not remarked(found, "In TT")
