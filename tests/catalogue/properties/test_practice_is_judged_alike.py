"""Practice is judged as everything else is: types, settings, leakage, and what the eye saw."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from checkers import run
from checkers.catalogue.practice import fit_of
from checkers.domain.codes.registry import CODES
from checkers.domain.loads.registry import LOADS
from checkers.domain.sources.cautions import cautions_against
from checkers.judgement.practice.drills import DRILLS
from checkers.judgement.practice.exercise import Drawn, draw
from tests.catalogue.test_practice import ASKING_CAUSES, LEVELS, SOME_DAY, cause_behind

DAY = date(2026, 11, 24)
OF_THE_TYPE = {"type-too-low", "blinded-by-dc"}
ALL_THINGS = [key for key in DRILLS.things if key != "bond"]  # twenty can be done
SEEDS = range(1, 61)


def drawn(seed: int, level: str, code: str = "gb") -> Drawn:
    """Return the device of a number and a level."""
    return draw(seed, DRILLS.levels[int(level) - 1], CODES[code], DAY, fit_of)


def practised(seed: int, level: str, *done: str, **decision: str) -> dict[str, Any]:
    """Return the reply after what was done and decided."""
    request = {"seed": seed, "level": level, "actions": [{"do": one} for one in done]}
    reply = run("practice", SOME_DAY | request | {"decision": decision})
    assert reply["kind"] == "result", reply
    return reply


def marked(reply: dict[str, Any], about: str) -> dict[str, Any]:
    """Return a mark of a reply."""
    return next(one for one in reply["findings"] if one["about"] == about)


def chance(reply: dict[str, Any], code: str) -> float:
    """Return how likely a cause is, in good order with one wrong reading counted in."""
    also = ("reading-wrong",) if code == "in-good-order" else ()
    listed = {one["code"]: one["probability"] for one in reply["explanations"]}
    return float(sum(listed.get(one, 0.0) for one in (code, *also)))


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("code", ["gb", "iec", "de", "us"])
def test_the_type_is_what_type_for_load_says_of_it(code: str, level: str) -> None:
    """Where the cause is another, the device passes there; where it is the type, it fails."""
    for seed in SEEDS:
        one = drawn(seed, level, code)
        place, device = one.scene, one.case.device
        request = {
            "code": code,
            "on": str(DAY),
            "load": place.load,
            "shared": "no",  # the device of a place feeds nothing else
            "supply": place.fed,
            "separation": place.separation,
            "maker_says": place.maker_says,
            **({} if place.detection is None else {"dc_detection": place.detection}),
            "device": {
                "type": device.type,
                "rated_residual_current": f"{device.rated_residual_current} mA",
            },
        }
        given = {key: value for key, value in request.items() if value != ""}
        expected = "fail" if one.cause in OF_THE_TYPE else "pass"

        assert expected == run("type-for-load", given)["outcome"], (seed, one.scene.words)


@pytest.mark.parametrize("level", ASKING_CAUSES)
def test_no_device_too_low_for_its_equipment_may_be_left_in_service(level: str) -> None:
    """A type AC at a charge point, or a type A at one without detection, is never in order."""
    for seed in range(1, 120):
        one = drawn(seed, level)
        charge_point = one.scene.load == "ev-charge-point"
        too_low = one.case.device.type == "AC" or not one.scene.detection
        if charge_point and too_low:
            assert one.cause in OF_THE_TYPE, seed


@pytest.mark.parametrize("scene", DRILLS.scenes, ids=lambda scene: scene.words[:30])
def test_a_place_says_what_decides_about_its_equipment(scene: Any) -> None:
    """The learner reads there what type-for-load is told."""
    words = scene.words.lower()

    assert ("silent" in words) == (scene.load in NEEDS_ITS_MAKER and scene.maker_says == "silent")
    assert ("with 6 ma dc detection" in words) == (scene.detection is True)
    assert ("without 6 ma dc detection" in words) == (scene.detection is False)
    assert ("without separation" in words) == (scene.separation == "none")
    assert (f"type {scene.maker_says.lower()}" in words) == (scene.maker_says != "silent")


NEEDS_ITS_MAKER = {
    "three-phase-drive",
    "single-phase-drive",
    "workshop-machine",
    "pv-inverter",
    "heat-pump-single-phase",
}


def test_readings_taken_with_wrong_settings_neither_pass_nor_fail() -> None:
    """Once the settings are found not as noted, each reading of the instrument is cannot-say."""
    seen = 0
    for seed in SEEDS:
        if not cause_behind(seed, "3").startswith("wrong-"):
            continue
        reply = practised(seed, "3", "one-180", "ramp", "settings", limits="cannot-say")
        wrong = reply["answer"]["readings"][-1]["shows"] == "not as noted"
        if wrong:
            seen += 1
            assert marked(reply, "limits")["outcome"] == "pass"
            assert "not set as noted" in marked(reply, "limits")["says"]
            for said in ("pass", "fail"):
                again = practised(seed, "3", "one-180", "ramp", "settings", limits=said)
                assert marked(again, "limits")["outcome"] == "fail"
    assert seen >= 3


@pytest.mark.parametrize(
    ("level", "look", "shows", "causes"),
    [
        ("3", "marking", "type AC", {"wrong-device"}),
        ("3", "settings", "not as noted", {"wrong-waveform", "wrong-current"}),
        ("4", "watch", "another device opened", {"other-device-first"}),
    ],
)
def test_what_the_eye_saw_is_certain(level: str, look: str, shows: str, causes: set[str]) -> None:
    """A label of another type, a wrong setting, another device opening: all but 1, and enough."""
    seen = 0
    for seed in range(1, 120):
        if cause_behind(seed, level) not in causes:
            continue
        reply = practised(seed, level, look, cause="do-not-know")
        if shows in reply["answer"]["readings"][-1]["shows"]:
            seen += 1
            assert sum(chance(reply, one) for one in causes) > 0.99, seed
            if len(causes) == 1:
                assert marked(reply, "tests")["outcome"] == "pass"
    assert seen >= 2


@pytest.mark.parametrize("level", ASKING_CAUSES)
def test_the_more_is_done_the_less_unlikely_is_the_truth(level: str) -> None:
    """After all that can be done the true cause leads, whatever it is.

    What a load disturbs shows by its scatter alone: it takes the same test again and again.
    """
    for seed in range(1, 9):
        code = cause_behind(seed, level)
        if code != "load-disturbs":
            end = practised(seed, level, *ALL_THINGS[:20], cause="do-not-know")
            assert chance(end, code) > 0.5, (seed, code)


def test_leakage_that_the_budget_fails_is_not_in_good_order() -> None:
    """What leakage-budget fails by the clamp is no sound circuit, whatever else was read."""
    seen = 0
    for seed in SEEDS:
        reply = practised(seed, "4", "leakage", cause="do-not-know")
        current = reply["answer"]["readings"][-1]["shows"]
        request = {"device": {"rated_residual_current": "30 mA", "type": "A"}, "measured": current}
        if run("leakage-budget", SOME_DAY | request)["outcome"] == "fail":
            seen += 1
            assert not chance(reply, "in-good-order")
    assert seen >= 3


def test_a_case_carries_the_cautions_of_its_equipment() -> None:
    """As every reply about equipment does."""
    for seed in range(1, 20):
        hazards = LOADS[drawn(seed, "5").scene.load].hazards
        assert set(cautions_against(hazards)) <= set(practised(seed, "5")["cautions"])
