"""Readings that cannot all be true of one device are found, whatever their tests are called."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}
NAMES = ("trip-time", "no-trip")


def contradicting(*readings: dict[str, Any], **more: Any) -> list[str]:
    """Return what is said of readings that contradict each other."""
    listed = [{"waveform": "ac", **one} for one in readings]
    reply = run("readings", {"device": DEVICE, "readings": listed, **more})
    assert reply["outcome"] != "pass"
    return [one["says"] for one in reply["findings"] if "repeat itself" in one["says"]]


@pytest.mark.parametrize("tripped", NAMES)
@pytest.mark.parametrize("held", NAMES)
@pytest.mark.parametrize("held_at", [30, 31, 150])
@pytest.mark.parametrize("trip", ["28 ms", "< 30 ms", "tripped"])
def test_a_trip_contradicts_holding_at_as_much_current_or_more(
    tripped: str, held: str, held_at: int, trip: str
) -> None:
    """A device in order that trips at 30 mA trips at every greater current too (IEC 61008-1)."""
    first = {"test": tripped, "multiple": 1, "value": trip}
    second = {"test": held, "current": f"{held_at} mA", "value": "no trip"}

    assert len(contradicting(first, second)) == 1


def test_holding_at_less_current_contradicts_nothing() -> None:
    """Holding at half the rating is what the device must do."""
    held = {"test": "no-trip", "multiple": 0.5, "waveform": "ac", "value": "no trip"}
    timed = {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "28 ms"}

    assert run("readings", {"device": DEVICE, "readings": [held, timed]})["outcome"] == "pass"


def test_two_starts_may_differ() -> None:
    """One polarity may be dead: each reading is then as it is, and one of them fails."""
    first = {"test": "trip-time", "multiple": 1, "phase": "0", "value": "28 ms"}
    second = {"test": "trip-time", "multiple": 1, "phase": "180", "value": "no trip"}

    assert contradicting(first, second) == []


def test_a_timer_that_stopped_before_the_trip_contradicts_nothing() -> None:
    """Held for 20 ms and tripped after 28 ms are both true of one device."""
    first = {"test": "trip-time", "multiple": 1, "value": "28 ms"}
    second = {"test": "trip-time", "multiple": 1, "value": "> 20 ms"}

    assert contradicting(first, second) == []


def test_a_ramp_below_a_current_that_held_is_a_contradiction() -> None:
    """Tripping at 18 mA on a rise and holding at 27 mA cannot both be."""
    ramp = {"test": "ramp", "value": "18 mA"}
    held = {"test": "no-trip", "current": "27 mA", "value": "no trip"}
    listed = [{"waveform": "ac", **one} for one in (ramp, held)]
    reply = run("readings", {"device": DEVICE, "readings": listed})

    assert any("The ramp trips it below" in one["says"] for one in reply["findings"])


def test_a_device_that_held_once_is_not_operated_until_it_trips() -> None:
    """Common practice: in a fault there is one operation, and what was seen once stands."""
    times = [
        {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": value}
        for value in ("> 1999 ms", "28 ms")
    ]
    device = {"type": "A", "rated_residual_current": "30 mA"}
    findings = run("readings", {"device": device, "readings": times})["findings"]
    told = [one["do_next"] for one in findings if one["about"].endswith(", twice")]

    assert len(told) == 1
    assert "a few times" not in told[0]
    assert "out of service and replaced" in told[0]
