"""Explain: causes with probabilities, reasons and actions, the danger first, no verdict."""

from __future__ import annotations

import os
import subprocess
import sys
from typing import Any

import pytest

from checkers import run
from checkers.domain.causes import CAUSES

HUNDRED: list[dict[str, Any]] = [
    {"test": "trip-time", "multiple": 5, "waveform": "ac", "value": "16.9 ms"},
    {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "> 300 ms"},
    {"test": "ramp", "waveform": "ac", "value": "75 mA"},
]
SOUND: list[dict[str, Any]] = [
    {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "28 ms"}
]
DEVICE = {"type": "A", "rated_residual_current": "30 mA"}


def explain(readings: list[dict[str, Any]], **more: Any) -> dict[str, Any]:
    """Return the reply for some readings."""
    request = {"code": "gb", "on": "2026-11-24", "device": DEVICE, "readings": readings}
    return run("explain", request | more)


def test_each_cause_comes_with_its_action() -> None:
    """Code, name, probability, what speaks for it and against, and what to do."""
    *causes, rest = explain(HUNDRED)["explanations"]

    assert rest["code"] == "rest"
    for one in causes:
        assert set(one) == {"code", "name", "probability", "for", "against", "do_next"}
        assert one["name"] == CAUSES[one["code"]].name
        assert one["do_next"] == CAUSES[one["code"]].do_next
        assert 0.0 < one["probability"] <= 1.0


def test_danger_is_named_before_anything_else() -> None:
    """A wrong device leaves people unprotected: first finding and first caution say so."""
    reply = explain(HUNDRED)

    assert reply["findings"][0]["about"] == "whether people are protected"
    assert "without protection" in reply["findings"][0]["says"]
    assert "unprotected" in reply["cautions"][0]


def test_sound_readings_raise_no_alarm() -> None:
    """With nothing dangerous likely there is no finding of danger."""
    assert [one["about"] for one in explain(SOUND)["findings"]] == ["which cause it is"]


def test_a_device_without_a_rating_cannot_be_explained() -> None:
    """What is missing is named."""
    reply = explain(SOUND, device={"type": "A"})

    assert reply["outcome"] == "cannot-say"
    assert not reply["explanations"]
    assert "rated residual current" in reply["findings"][0]["says"]


@pytest.mark.parametrize("form", ["gfci", "rdc-dd", "monitor"])
def test_devices_of_other_kinds_are_not_guessed_at(form: str) -> None:
    """Their trip currents follow other rules."""
    reply = explain(SOUND, device=DEVICE | {"form": form})

    assert not reply["explanations"]
    assert reply["outcome"] == "cannot-say"


def test_readings_of_no_use_are_named_and_nothing_is_told_from_them() -> None:
    """An aborted test is no reading."""
    reply = explain([{"test": "trip-time", "multiple": 1, "value": "test not completed"}])
    says = [one["says"] for one in reply["findings"]]

    assert any("No reading could be used" in one for one in says)
    assert any(one.startswith("Left out") for one in says)


def test_a_dead_button_or_a_good_one_never_makes_a_pass() -> None:
    """No reading whatsoever gives a pass or a fail here."""
    for value in ("operates", "does not operate"):
        reply = explain([{"test": "button", "value": value}, *HUNDRED])

        assert reply["outcome"] == "cannot-say"


@pytest.mark.parametrize("seed", ["0", "1", "4242"])
def test_the_answer_does_not_depend_on_the_order_of_hashes(seed: str) -> None:
    """Another hash seed, the same probabilities."""
    script = (
        "from checkers import run\n"
        f"reply = run('explain', {{'device': {DEVICE!r}, 'readings': {HUNDRED!r}}})\n"
        "print([(one['code'], one['probability']) for one in reply['explanations']])\n"
        "print(reply['next_test'])"
    )
    environment = os.environ | {"PYTHONHASHSEED": seed}
    found = subprocess.run(
        [sys.executable, "-c", script], env=environment, capture_output=True, text=True, check=True
    ).stdout
    here = run("explain", {"device": DEVICE, "readings": HUNDRED})
    expected = [(one["code"], one["probability"]) for one in here["explanations"]]

    assert f"{expected}\n{here['next_test']}\n" == found


@pytest.mark.parametrize(("marking", "sign"), [("another", 1), ("as-noted", -1)])
def test_looking_at_the_marking_settles_what_it_can(marking: str, sign: int) -> None:
    """The proposed look, once taken, moves the wrong device up or down."""
    before = explain(HUNDRED)["explanations"]
    after = explain(HUNDRED, looked={"marking": marking})["explanations"]

    assert sign * (chance(after, "wrong-device") - chance(before, "wrong-device")) > 0.15


def test_a_path_that_was_found_makes_it_the_cause() -> None:
    """Insulation from neutral to earth is gone."""
    after = explain(HUNDRED, looked={"path": "found"})["explanations"]

    assert after[0]["code"] == "neutral-earth-path"
    assert any("path from neutral to earth" in words for words in after[0]["for"])


def test_a_look_is_not_proposed_twice() -> None:
    """After reading the marking something else comes next."""
    after = explain(HUNDRED, looked={"marking": "as-noted"})["next_test"]

    assert "rating, type and delay" not in after["test"]


def chance(explanations: list[dict[str, Any]], code: str) -> float:
    """Return the probability of a cause, 0 where it is not listed."""
    return next((one["probability"] for one in explanations if one["code"] == code), 0.0)
