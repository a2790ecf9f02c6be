"""What a judgement of readings says beside its verdict: what disagrees, whose it is, what to do."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run
from checkers.domain.device import readings

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}
PASSING = {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "28 ms"}
VALUES = (
    "28 ms",
    "> 300 ms",
    "< 10 ms",
    "22 mA",
    "28",
    "no trip",
    "trip",
    "operates",
    "does not operate",
    "not tested",
    "test not completed",
    "30 31",
)


def reply(*readings: dict[str, Any], **more: Any) -> dict[str, Any]:
    """Return the reply on some readings of a 30 mA type A device."""
    asked = {"code": "gb", "on": "2026-01-01", "device": DEVICE, "readings": readings}
    return run("readings", {**asked, **more})


def taken(kind: str, value: str, **more: Any) -> dict[str, Any]:
    """Return a reading on AC."""
    return {"test": kind, "waveform": "ac", "value": value, **more}


def test_readings_that_each_pass_do_not_pass_where_they_contradict() -> None:
    """It trips at 20 mA applied at once, and yet the ramp needs 27 mA: both cannot be."""
    found = reply(PASSING, taken("trip-time", "60 ms", current="20 mA"), taken("ramp", "27 mA"))
    passing = [one for one in found["findings"] if one["outcome"] == "pass"]

    assert found["outcome"] == "cannot-say"
    assert len(passing) == len(found["findings"]) - 1


@pytest.mark.parametrize(("ramp", "contradicts"), [("25.9 mA", False), ("26 mA", True)])
def test_a_ramp_contradicts_a_time_from_two_uncertainties_on(ramp: str, contradicts: bool) -> None:
    """20 mA applied at once, and twice 10 % of 30 mA: from 26 mA on (judging by GUM, ours)."""
    found = reply(PASSING, taken("trip-time", "60 ms", current="20 mA"), taken("ramp", ramp))

    assert contradicts == any("the one the ramp needed" in f["says"] for f in found["findings"])


@pytest.mark.parametrize(("waveform", "contradicts"), [("ac", True), ("half-wave", False)])
def test_a_no_trip_test_contradicts_a_ramp_of_its_own_waveform_only(
    waveform: str, contradicts: bool
) -> None:
    """A device may trip at less on AC than on a half wave, where the two are different tests."""
    tripped = taken("no-trip", "40 ms", multiple="0.5")
    found = reply(tripped, {"test": "ramp", "waveform": waveform, "value": "27 mA"})
    says = "although the ramp needs more current"

    assert contradicts == any(says in one["says"] for one in found["findings"])


@pytest.mark.parametrize(
    ("reading", "judges"),
    [
        ({"test": "button", "value": "not tested"}, "function"),
        (taken("trip-time", "not tested", multiple=1), "device-standard"),
        (taken("ramp", "not tested"), "device-standard"),
    ],
)
def test_a_reading_without_a_result_is_filed_where_its_result_would_be(
    reading: dict[str, Any], judges: str
) -> None:
    """A button tells of the function, a measured test of the device standard."""
    assert [one["judges"] for one in reply(reading)["findings"]] == [judges]


@pytest.mark.parametrize(
    ("value", "next_step"),
    [
        ("45 mA", "Check that the waveform set was the right one"),
        ("9 mA", "standing leakage makes a device seem too sensitive"),
    ],
)
def test_a_ramp_says_what_to_do_on_its_own_side(value: str, next_step: str) -> None:
    """Too high and too low have different causes, so the remedies are not exchanged."""
    assert next_step in reply(taken("ramp", value))["findings"][0]["do_next"]


def test_a_no_trip_test_that_was_too_short_says_how_long_it_lasts() -> None:
    """BS 7671:2018+A2:2022 holds the current for 2 s, as quoted in the trade."""
    found = reply(taken("no-trip", "> 300 ms", multiple="0.5"))

    assert found["findings"][0]["do_next"] == "Hold the current for 2 s."


def test_a_plan_holds_the_no_trip_current_for_two_seconds() -> None:
    """The plan says the same time as the verdict asks for, in seconds."""
    plan = run("test-plan", {"code": "gb", "on": "2026-01-01", "device": DEVICE})
    steps = [one for one in plan["answer"]["steps"] if one["test"] == "no-trip"]

    assert steps
    assert all("for 2 s." in one["do"] for one in steps)


@pytest.mark.parametrize(("waveform", "judged"), [("ac", 1), ("half-wave", 0)])
def test_a_code_judges_the_ramp_it_asks_for(waveform: str, judged: int) -> None:
    """DIN VDE 0100-600 asks for a ramp on AC, and says nothing of one on a half wave."""
    reading = {"test": "ramp", "waveform": waveform, "value": "27 mA"}
    found = reply(reading, code="de")["findings"]

    assert judged == sum(one["judges"] == "installation-code" for one in found)


def test_a_half_wave_at_five_times_drives_seven_times() -> None:
    """1.4 times five is seven: 40 ms at 210 mA (IEC 61008-1, break times of type A)."""
    late = {"test": "trip-time", "waveform": "half-wave", "value": "45 ms"}

    for level in ({"multiple": 5}, {"current": "210 mA"}):
        finding = reply({**late, **level}, code="iec")["findings"][0]
        assert (finding["outcome"], finding["limit"]) == ("fail", "≤ 40 ms")
    assert reply({**late, "current": "150 mA"}, code="iec")["outcome"] != "fail"


def test_what_the_code_still_asks_for_is_named_with_its_waveform() -> None:
    """BS 7671 since 2022 asks for one time at the rating, on AC."""
    named = reply(taken("ramp", "22 mA"))["next_test"]["test"]

    assert "×1" in named
    assert "on AC" in named


@pytest.mark.parametrize("test", [one.value for one in readings.Test])
@pytest.mark.parametrize("value", VALUES)
def test_every_finding_on_a_reading_says_something(test: str, value: str) -> None:
    """Whatever is typed for whatever test: a blank verdict tells nobody what to do."""
    found = reply(taken(test, value, multiple=1))

    assert [one["about"] for one in found.get("findings", ()) if not one["says"]] == []
