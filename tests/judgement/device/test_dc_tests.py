"""A device that is there for smooth DC is judged by its tests with it, or their lack is told."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run

SOUND = {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "28 ms"}
SMOOTH = {"test": "trip-time", "multiple": 2, "waveform": "smooth-dc", "phase": "+"}
HALF = {"test": "trip-time", "multiple": 1, "waveform": "half-wave", "value": "30 ms"}


def reply(kind: str, *readings: dict[str, Any], **device: str) -> dict[str, Any]:
    """Return the reply on a 30 mA device of a type, by BS 7671."""
    described = {"type": kind, "rated_residual_current": "30 mA", **device}
    request = {"code": "gb", "on": "2026-11-24", "device": described, "readings": list(readings)}
    return run("readings", request)


def fitness(found: dict[str, Any]) -> list[str]:
    """Return the outcomes on fitness for DC."""
    return [one["outcome"] for one in found["findings"] if one["judges"] == "fitness-for-dc"]


@pytest.mark.parametrize("kind", ["B", "B+"])
@pytest.mark.parametrize("value", ["no trip", "> 300 ms", "340 ms"])
def test_a_failed_test_with_smooth_dc_is_a_failure_of_fitness_for_dc(kind: str, value: str) -> None:
    """At twice its rating a type B must trip within 300 ms (IEC 62423)."""
    found = reply(kind, SOUND, {**SMOOTH, "value": value})

    assert fitness(found) == ["fail"]
    assert found["outcome"] == "fail"


def test_a_ramp_that_a_type_b_did_not_answer_counts_too() -> None:
    """It must have operated at twice its rating (IEC 62423): 60 mA."""
    ramp = {"test": "ramp", "waveform": "smooth-dc", "value": "80 mA"}

    assert fitness(reply("B", SOUND, ramp)) == ["fail"]


def test_a_type_a_is_not_there_for_smooth_dc() -> None:
    """No trip on smooth DC is no failure of a type A, and makes none."""
    assert fitness(reply("A", SOUND, {**SMOOTH, "value": "no trip"})) == []


def test_a_test_with_smooth_dc_that_passes_adds_no_failure() -> None:
    """40 ms at twice the rating is in order."""
    assert fitness(reply("B", SOUND, {**SMOOTH, "value": "40 ms"})) == []


@pytest.mark.parametrize(
    ("readings", "untested"),
    [
        ((SOUND,), "half wave and smooth DC"),
        ((SOUND, HALF), "smooth DC"),
        ((SOUND, HALF, {**SMOOTH, "value": "not tested"}), "smooth DC"),
        ((SOUND, HALF, {**SMOOTH, "value": "40 ms"}), ""),
    ],
)
def test_what_a_type_b_was_not_tested_with_is_named(
    readings: tuple[dict[str, Any], ...], untested: str
) -> None:
    """An AC time says nothing of the waveforms a type B is there for."""
    said = [one for one in reply("B", *readings)["cautions"] if one.startswith("Not tested here")]

    assert [one.partition(".")[0] for one in said] == (
        [f"Not tested here: {untested}"] if untested else []
    )


def test_detection_of_6_milliamperes_is_there_for_smooth_dc() -> None:
    """It must open within 10 s at 6 mA (IEC 62955:2018, table 2)."""
    held = {"test": "trip-time", "current": "60 mA", "waveform": "smooth-dc", "value": "no trip"}
    found = reply("unknown", held, form="rdc-dd", rated_residual_current="6 mA")

    assert fitness(found) == ["fail"]
