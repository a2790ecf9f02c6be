"""What a test plan holds, in which order, and what it leaves open."""

from __future__ import annotations

from itertools import product
from typing import Any

import pytest

from checkers import run
from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Form

CONTRACT = {"test", "multiple", "current", "waveform", "phase", "loads", "limit", "required_by"}
TRIPPING = ["rccb", "rcbo", "socket", "portable", "modular", "cbr"]
LIVE = {"no-trip", "trip-time", "ramp"}


def plan(code: str = "gb", on: str = "2026-11-24", **device: Any) -> dict[str, Any]:
    """Return the reply for a device."""
    return run("test-plan", {"code": code, "on": on, "device": device})


def steps(**asked: Any) -> list[dict[str, Any]]:
    """Return the steps for a device."""
    found = plan(**asked)["answer"]["steps"]
    assert found
    return list(found)


def currents(found: list[dict[str, Any]], test: str, waveform: str) -> list[float]:
    """Return the currents [mA] of the steps of one test, in order."""
    return [
        one["current"]["value"]
        for one in found
        if (one["test"], one["waveform"]) == (test, waveform)
    ]


EVERY_DEVICE = list(
    product(CODES, TRIPPING, ["AC", "A", "F", "B", "unknown"], ["30 mA", "300 mA", None])
)


@pytest.mark.parametrize("code", CODES)
def test_every_plan_is_whole(code: str) -> None:
    """Each step has the parts of the contract, words, and a current wherever one is set."""
    for _, form, kind, rated in (one for one in EVERY_DEVICE if one[0] == code):
        device = {"form": form, "type": kind, "rated_residual_current": rated}
        for step in steps(code=code, **device):
            assert set(step) >= CONTRACT, device
            assert step["do"]
            assert step["why"]
            assert step["required_by"]
            assert step["loads"] in ("on", "off")
            assert (step["current"] is not None) == (step["test"] in LIVE)


@pytest.mark.parametrize("code", CODES)
def test_the_order_is_look_hold_time_rise_dc_and_the_button_last(code: str) -> None:
    """Inspection and type check come first, AC before DC, the button after all tests."""
    found = steps(code=code, type="B", rated_residual_current="30 mA")
    tests = [one["test"] for one in found]
    ac = [one["test"] for one in found if one["waveform"] == "ac"]
    dc_first = next(place for place, one in enumerate(found) if one["waveform"] == "smooth-dc")

    assert tests[:2] == ["inspection", "type-check"]
    assert tests[-1] == "button"
    assert ac == sorted(ac, key=["no-trip", "trip-time", "ramp"].index)
    assert all(one["waveform"] != "ac" for one in found[dc_first:])


def test_loads_are_on_only_while_nothing_is_injected() -> None:
    """Leakage and DC are measured with the loads on; every test current flows with them off."""
    for step in steps(type="A", rated_residual_current="30 mA"):
        assert step["loads"] == ("off" if step["test"] in LIVE | {"button"} else "on")


@pytest.mark.parametrize(
    ("rated", "no_trip", "one", "five"),
    [("10 mA", 5, 10, 50), ("30 mA", 15, 30, 150), ("300 mA", 150, 300, 1500)],
)
def test_ac_currents_are_the_multiples_of_the_rating(
    rated: str, no_trip: float, one: float, five: float
) -> None:
    """Half, once and five times."""
    found = steps(code="iec", type="AC", rated_residual_current=rated)

    assert currents(found, "no-trip", "ac") == [no_trip]
    assert currents(found, "trip-time", "ac") == [one, one, five, five]


# IEC 61008-1, table 20 (as quoted): half wave 1.4 times the rating, twice for 10 mA.
@pytest.mark.parametrize(("rated", "half_wave"), [("10 mA", 20), ("30 mA", 42), ("300 mA", 420)])
def test_a_half_wave_step_drives_the_tabulated_current(rated: str, half_wave: float) -> None:
    """42 mA for a 30 mA type A device, from both starts."""
    found = steps(type="A", rated_residual_current=rated)

    assert currents(found, "trip-time", "half-wave") == [half_wave, half_wave]
    phases = [one["phase"] for one in found if one["waveform"] == "half-wave"]
    assert phases == ["0", "180", "0", "180"]


# IEC 62423, 5.2 (as quoted): 0.3 s at twice the rating on smooth DC, operation by twice the rating.
def test_type_b_is_timed_at_twice_its_rating_on_smooth_dc_in_both_directions() -> None:
    """60 mA for 30 mA: at 30 mA a sound device may hold."""
    found = [
        one
        for one in steps(type="B", rated_residual_current="30 mA")
        if one["waveform"] == "smooth-dc"
    ]

    assert currents(found, "trip-time", "smooth-dc") == [60, 60]
    assert [one["phase"] for one in found] == ["+", "-", "+", "-"]
    assert {one["limit"] for one in found} == {"≤ 300 ms", "15 mA to 60 mA"}


@pytest.mark.parametrize(
    ("kind", "waveforms"),
    [
        ("AC", {"ac"}),
        ("A", {"ac", "half-wave"}),
        ("F", {"ac", "half-wave", "composite"}),
        ("B", {"ac", "half-wave", "composite", "smooth-dc"}),
    ],
)
def test_a_type_is_tested_only_with_currents_it_must_see(kind: str, waveforms: set[str]) -> None:
    """A type AC device is not held to half waves, nor a type A one to smooth DC."""
    found = steps(type=kind, rated_residual_current="30 mA")

    assert waveforms == {one["waveform"] for one in found if one["waveform"]}


def test_selective_devices_wait_between_tests_and_have_a_least_time() -> None:
    """Half a minute before each test, and 130 to 500 ms at once the rating."""
    found = steps(code="iec", type="A", rated_residual_current="300 mA", delay="S")
    timed = [one for one in found if one["test"] in LIVE]

    assert all(one["wait"] == {"value": 30.0, "unit": "s"} for one in timed)
    assert timed[1]["limit"] == "130 ms to 500 ms"
    assert not any(one["wait"] for one in found if one["test"] not in LIVE)


def test_a_general_device_waits_for_nothing() -> None:
    """Only an energy store needs time."""
    assert not any(one["wait"] for one in steps(type="A", rated_residual_current="30 mA"))


# BS 7671:2018+A2:2022, 643.7.1 and 643.8 (as quoted): one AC test at the rating, whatever the
# type; no half, no five times, no 180 degrees asked. In 2008 all three were asked for.
def test_what_britain_requires_follows_the_edition_of_the_day() -> None:
    """One timed test today; half, once and five times under the edition of 2008."""
    today = [one for one in steps(type="A", rated_residual_current="30 mA") if one["test"] in LIVE]
    required = [one for one in today if one["standing"] == "required"]
    assert [(one["test"], one["multiple"], one["limit"]) for one in required] == [
        ("trip-time", 1, "≤ 300 ms")
    ]

    old = steps(on="2010-06-01", type="AC", rated_residual_current="30 mA")
    multiples = {one["multiple"] for one in old if one["standing"] == "required"}
    assert multiples == {0.5, 1, 5, None}


def test_a_declared_quarter_ampere_takes_the_place_of_five_times() -> None:
    """250 mA and 40 ms, and no 150 mA step that would prove nothing."""
    found = steps(type="A", rated_residual_current="30 mA", made_to="0.25 A")

    assert 250 in currents(found, "trip-time", "ac")
    assert 150 not in currents(found, "trip-time", "ac")
    plain = steps(type="A", rated_residual_current="30 mA")
    assert any("250 mA" in one["if_it_fails"] for one in plain)


# IEC 62955:2018, table 2 and 9.9.2.1 (read): 6 mA 10 s, 60 mA 0.3 s, 200 mA 0.1 s; 3 to 6 mA.
def test_dc_detection_in_a_charge_point_is_tested_at_its_own_currents() -> None:
    """Absolute currents, whatever the code, in both directions."""
    found = steps(form="rdc-dd")

    assert currents(found, "trip-time", "smooth-dc") == [6, 6, 60, 60, 200, 200]
    limits = [one["limit"] for one in found if one["test"] == "trip-time"]
    assert limits == ["≤ 10 s", "≤ 10 s", "≤ 300 ms", "≤ 300 ms", "≤ 100 ms", "≤ 100 ms"]
    assert {one["limit"] for one in found if one["test"] == "ramp"} == {"3 mA to 6 mA"}


# UL 943, class A (as quoted): no trip below 4 mA, trip at 6 mA within (20 / 6) ^ 1.43 s.
def test_an_interrupter_is_tested_at_six_milliamperes() -> None:
    """5.594 s at 6 mA."""
    found = steps(code="us", form="gfci")

    assert currents(found, "trip-time", "ac") == [6]
    limits = {one["test"]: one["limit"] for one in found}
    assert limits["trip-time"] == f"≤ {(20 / 6) ** 1.43:.4g} s"
    assert limits["ramp"] == "4 mA to 6 mA"


def test_a_monitor_gets_no_trip_tests_and_the_plan_says_why() -> None:
    """It warns; another device disconnects."""
    found = steps(form="monitor", rated_residual_current="100 mA")

    assert not {"trip-time", "no-trip"} & {one["test"] for one in found}
    assert "does not protect" in found[0]["do"]


@pytest.mark.parametrize("rated", ["30 mA", "100 mA"])
def test_a_modular_device_is_tested_as_a_combination(rated: str) -> None:
    """Sensor, relay, release and breaker count together, at the rating that is set."""
    found = steps(form="modular", type="A", rated_residual_current=rated)

    assert "relay" in found[0]["do"]
    timed = [one for one in found if one["test"] == "trip-time"]
    assert timed
    assert all("together" in one["connect"] for one in timed)


def test_a_long_set_delay_has_no_invented_limit() -> None:
    """At twice its rating it must hold for its delay; how long it may take, its maker states."""
    reply = plan(form="cbr", type="A", rated_residual_current="300 mA", delay="200 ms")
    twice = [one for one in reply["answer"]["steps"] if one["multiple"] == 2]

    assert {one["limit"] for one in twice} == {"≥ 200 ms"}
    assert any("maker" in one["says"] for one in reply["findings"])


def test_without_a_rating_no_milliampere_is_named() -> None:
    """The plan says what to read first, and has no step with a current."""
    reply = plan(type="A")

    assert reply["outcome"] == "cannot-say"
    assert any(one.get("field") == "device.rated_residual_current" for one in reply["findings"])
    assert not any(one["current"] for one in reply["answer"]["steps"])
    assert reply["answer"]["find_out_first"] == ["Read IΔn on the device first."]


def test_without_a_type_only_ac_is_planned() -> None:
    """AC tests hold for every type; the others wait for the symbol."""
    reply = plan(rated_residual_current="30 mA")

    assert {one["waveform"] for one in reply["answer"]["steps"]} == {"", "ac"}
    assert any(one.get("field") == "device.type" for one in reply["findings"])


def test_a_type_b_device_without_known_dc_limits_is_said_so() -> None:
    """A socket-outlet of type B: its maker states the figures."""
    reply = plan(form="socket", type="B", rated_residual_current="30 mA")

    assert any("smooth DC" in one["says"] for one in reply["findings"])


@pytest.mark.parametrize("form", Form)
def test_a_plan_never_passes(form: str) -> None:
    """Nothing was judged, so nothing passed."""
    reply = plan(form=form, type="A", rated_residual_current="30 mA")

    assert reply["kind"] == "result"
    assert reply["outcome"] == "cannot-say"


@pytest.mark.parametrize("code", CODES)
def test_a_plan_and_the_verdict_on_its_readings_agree(code: str) -> None:
    """A reading taken as planned and well inside its limit passes in the readings checker."""
    device = {"type": "B", "rated_residual_current": "30 mA"}
    for step in steps(code=code, **device):
        if step["test"] not in LIVE or step["waveform"] == "composite":
            continue
        value = {
            "no-trip": "no trip",
            "trip-time": "20 ms",
            "ramp": f"{step['current']['value'] * 0.75} mA",
        }
        reading = {
            "test": step["test"],
            "multiple": step["multiple"],
            "waveform": step["waveform"],
            "value": value[step["test"]],
        }
        request = {"code": code, "on": "2026-11-24", "device": device, "readings": [reading]}
        reply = run("readings", {**request, "circuit": {"loads": "off"}})
        outcomes = {one["outcome"] for one in reply["findings"] if one["about"] != "trip not shown"}
        assert outcomes == {"pass"}, (step, reply["findings"])


def test_the_day_decides_what_is_said_of_type_ac() -> None:
    """In Australia type AC may not be installed from May 2023 on (AS/NZS 3000, amendment 2)."""
    ac = {"code": "au", "type": "AC", "rated_residual_current": "30 mA"}

    before, after = (steps(on=day, **ac)[1]["why"] for day in ("2023-04-30", "2023-05-01"))
    assert "may not be installed any more" not in before
    assert "may not be installed any more" in after


def test_the_code_says_when_to_test_again() -> None:
    """The button every six months in Britain (BS 7671:2018, 514.12.2, as quoted)."""
    again = plan(type="A", rated_residual_current="30 mA")["answer"]["again"]

    assert any("6 months" in one for one in again)


@pytest.mark.parametrize(
    ("kind", "limit"),
    [
        ("AC", "none declared for this type"),
        ("A", "≤ 6 mA"),
        ("F", "≤ 10 mA"),
        ("B", "≤ 12 mA"),  # 0.4 times 30 mA, which is more than 10 mA
        ("unknown", "read the type first"),
    ],
)
def test_the_smooth_dc_a_type_bears_is_the_published_one(kind: str, limit: str) -> None:
    """Source: [1] BS 7671, 531.3.3, notes 1 to 3; none of them speaks of type AC."""
    (found,) = [
        one
        for one in steps(type=kind, rated_residual_current="30 mA")
        if one["test"] == "dc-residual"
    ]

    assert found["limit"] == limit
