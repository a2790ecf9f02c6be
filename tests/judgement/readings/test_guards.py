"""No guard of any kind of test lets a reading pass that it should stop."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, combinations, product
from typing import Any

import pytest

from checkers import run
from checkers.domain.causes import CAUSES
from checkers.domain.device.deciding_inputs import DECIDING, Decides
from checkers.domain.device.readings import Test as Kind
from checkers.judgement.readings.guards import GUARDS

GOOD: dict[str, dict[str, Any]] = {
    "trip-time": {"multiple": "1", "waveform": "ac", "value": "28 ms"},
    "no-trip": {"multiple": "0.5", "waveform": "ac", "value": "> 1999 ms"},
    "ramp": {"waveform": "ac", "value": "22 mA"},
    "button": {"value": "operates"},
    "unknown": {"multiple": "1", "waveform": "ac", "value": "28 ms"},
}
VALUES: dict[str, dict[str, str]] = {
    "a figure": {"trip-time": "28 ms", "no-trip": "28 ms", "ramp": "22 mA", "unknown": "28 ms"},
    "a bare figure": dict.fromkeys(["trip-time", "no-trip", "ramp", "unknown"], "22"),
    "more than": dict.fromkeys(["trip-time", "no-trip", "unknown"], "> 1999 ms")
    | {"ramp": "> 33 mA", "button": "> 300"},
    "less than": {"trip-time": "< 40 ms", "no-trip": "< 40 ms", "ramp": "< 22 mA"},
    "no trip": dict.fromkeys(Kind, "no trip"),
    "tripped": dict.fromkeys(Kind, "tripped"),
    "operates": dict.fromkeys(Kind, "operates"),
    "does not operate": dict.fromkeys(Kind, "does not operate"),
    "no result": dict.fromkeys(Kind, "not tested"),
    "unclear": dict.fromkeys(Kind, "28/18"),
    "the other unit": {"trip-time": "22 mA", "no-trip": "22 mA", "ramp": "20 ms"},
    "too quick": dict.fromkeys(["trip-time", "no-trip", "unknown"], "1.5 ms"),
}
SHAPED = [(test, value) for value, by_test in VALUES.items() for test in by_test]
DEVICES: list[dict[str, Any]] = [
    {"type": kind, "rated_residual_current": rated, "form": form}
    for kind, rated, form in (
        ("A", "30 mA", "rccb"),
        ("AC", "100 mA", "rcbo"),
        ("B", "30 mA", "rccb"),
        ("A", "10 mA", "socket"),
        ("F", "300 mA", "cbr"),
        ("A", "6 mA", "rdc-dd"),
        ("A", "6 mA", "gfci"),
    )
]
LEVELS: list[dict[str, str]] = [
    {"multiple": "0.5"},
    {"multiple": "1"},
    {"multiple": "5"},
    {"current": "6 mA"},
    {"current": "250 mA"},
]
WAVEFORMS = ("ac", "half-wave", "smooth-dc")
LEFT_OUT = ("type", "rating", "waveform", "level")


def outcomes(reading: dict[str, Any], device: dict[str, Any], **more: Any) -> list[str]:
    """Return the outcomes of the findings on one reading."""
    request = {"code": "gb", "on": "2026-11-24", "device": device, "readings": [reading], **more}
    reply = run("readings", request)
    if reply["kind"] == "invalid":
        return []
    ours = [one for one in reply["findings"] if one["about"] != "trip not shown"]
    assert ours, reply
    return [one["outcome"] for one in ours]


def passes(found: list[str]) -> bool:
    """Tell whether every finding passes, and there is one."""
    return bool(found) and set(found) == {"pass"}


def without(
    names: tuple[str, ...], reading: dict[str, Any], device: dict[str, Any]
) -> tuple[dict[str, Any], dict[str, Any]]:
    """Return a reading and its device with some inputs left out."""
    keys = {"level": ("multiple", "current"), "rating": ("rated_residual_current",)}
    gone = {key for name in names for key in keys.get(name, (name,))}
    return (
        {key: value for key, value in reading.items() if key not in gone},
        {key: value for key, value in device.items() if key not in gone},
    )


def only_ac(names: tuple[str, ...], reading: dict[str, Any], device: dict[str, Any]) -> bool:
    """Tell whether half the rating can mean AC alone: a type AC senses nothing else."""
    half = names == ("waveform",) and reading.get("multiple") == "0.5"
    return half and device["type"] == "AC"


def subsets() -> Iterator[tuple[str, ...]]:
    """Yield every combination of inputs to leave out."""
    sizes = range(1, len(LEFT_OUT) + 1)
    return chain.from_iterable(combinations(LEFT_OUT, size) for size in sizes)


@pytest.mark.parametrize(("test", "value"), SHAPED, ids=[f"{t}, {v}" for t, v in SHAPED])
@pytest.mark.parametrize("waveform", WAVEFORMS)
def test_no_combination_of_left_out_inputs_makes_a_pass(
    test: str, value: str, waveform: str
) -> None:
    """Without what always decides nothing can be said; without the rest nothing newly passes."""
    always = {name for name, when in DECIDING[test].items() if when is Decides.ALWAYS}
    levels = LEVELS if test in ("trip-time", "no-trip") else LEVELS[:1]
    for device, level in product(DEVICES if test != "button" else DEVICES[:1], levels):
        full = {"test": test, "waveform": waveform, "value": VALUES[value][test], **level}
        whole = outcomes(full, device)
        for names in subsets():
            found = outcomes(*without(names, full, device))
            if always & set(names):
                allowed = {"cannot-say", "fail"} if only_ac(names, full, device) else {"cannot-say"}
                assert set(found) <= allowed, (full, device, names)
            assert passes(whole) or not passes(found), (full, device, names)


STOPPED: dict[str, tuple[dict[str, Any], dict[str, Any], dict[str, Any]]] = {
    "no result": ({"value": "not tested"}, {}, {}),
    "two figures": ({"value": "28/18"}, {}, {}),
    "no waveform": ({"waveform": "unknown"}, {}, {}),
    "no multiple": ({"multiple": ""}, {}, {}),
    "no rating": ({}, {"rated_residual_current": ""}, {}),
    "no rating, a current set": (
        {"multiple": "", "current": "30 mA"},
        {"rated_residual_current": ""},
        {},
    ),
    "no type where the limit needs it": ({"waveform": "half-wave"}, {"type": "unknown"}, {}),
    "a monitor": ({}, {"form": "monitor"}, {}),
}
MEASURED = ("trip-time", "no-trip", "ramp")
OF_A_TRIP: dict[str, tuple[dict[str, Any], dict[str, Any], dict[str, Any]]] = {
    "not seen to open": ({}, {}, {"circuit": {"seen_to_open": False}}),
    "a word of a button": ({"value": "operates"}, {}, {}),
}
NOT_FOR = {("ramp", "no multiple"), ("ramp", "no rating, a current set")}


def stopped_cases() -> Iterator[Any]:
    """Yield each test with each thing that must stop it."""
    for test, (name, change) in product(Kind, STOPPED.items()):
        about_result = name in ("no result", "two figures", "a monitor")
        if (test in MEASURED or about_result) and (test, name) not in NOT_FOR:
            yield pytest.param(test.value, *change, id=f"{test}: {name}")
    for test, (name, change) in product(("trip-time", "ramp"), OF_A_TRIP.items()):
        yield pytest.param(test, *change, id=f"{test}: {name}")
    units = (("trip-time", "22 mA"), ("ramp", "20 ms"), ("no-trip", "> 1999 mA"))
    for test, wrong in units:
        yield pytest.param(test, {"value": wrong}, {}, {}, id=f"{test}: the other unit")
    tripped = {"value": "28 ms"}
    not_seen = {"circuit": {"seen_to_open": False}}
    yield pytest.param("no-trip", tripped, {}, not_seen, id="no-trip: not seen to open")
    for quick in ("1.5 ms", "< 3 ms", "2.9 ms"):
        yield pytest.param("trip-time", {"value": quick}, {}, {}, id=f"trip-time: {quick}")
    for ran_on in ("> 300 ms", "no trip"):
        seen = {"circuit": {"seen_to_open": True}}
        yield pytest.param("trip-time", {"value": ran_on}, {}, seen, id=f"seen to open: {ran_on}")
    yield pytest.param("unknown", {}, {}, {}, id="unknown: the test is not given")


@pytest.mark.parametrize(("test", "reading", "device", "more"), list(stopped_cases()))
def test_each_guard_stops_each_kind_of_test(
    test: str, reading: dict[str, Any], device: dict[str, Any], more: dict[str, Any]
) -> None:
    """What a guard is there for is never a pass, and no fail either: it cannot be said."""
    whole = {"test": test, **GOOD[test], **reading}
    fitted = {"type": "A", "rated_residual_current": "30 mA", **device}

    assert set(outcomes(whole, fitted, **more)) == {"cannot-say"}


def test_what_the_guards_stop_would_pass_without_it() -> None:
    """The good readings that the guards are tried with do pass, so that the trial means something.

    IEC 61008-1: 28 ms within 300 ms, held at one half, 22 mA within 15 to 30 mA.
    """
    device = {"type": "A", "rated_residual_current": "30 mA"}

    for test in ("trip-time", "no-trip", "ramp", "button"):
        assert passes(outcomes({"test": test, **GOOD[test]}, device)), test


def test_three_milliseconds_are_not_too_quick() -> None:
    """Contacts need some milliseconds to part (common practice): 3 ms is taken as it is."""
    device = {"type": "A", "rated_residual_current": "30 mA"}

    assert passes(outcomes({"test": "trip-time", **GOOD["trip-time"], "value": "3 ms"}, device))


def test_every_kind_of_test_has_its_guards() -> None:
    """No kind of test comes to a comparison unguarded."""
    assert {test.value for test in Kind} == set(GUARDS)
    assert all(GUARDS.values())


@pytest.mark.parametrize(
    ("test", "value", "says"),
    [
        ("trip-time", "22 mA", "22 mA is a current, but this test gives a trip time, in ms"),
        ("ramp", "20 ms", "20 ms is a time, but this test gives a trip current, in mA"),
        ("no-trip", "> 1999 mA", "is a current, but this test gives a trip time, in ms"),
    ],
)
def test_a_unit_mixed_up_is_told_the_right_way_round(test: str, value: str, says: str) -> None:
    """Both are named: what was written, and what the test gives."""
    device = {"type": "A", "rated_residual_current": "30 mA"}
    reading = {"test": test, **GOOD[test], "value": value}
    reply = run("readings", {"device": device, "readings": [reading]})

    assert says in reply["findings"][0]["says"]


def test_where_the_timer_ran_on_the_leads_are_told_as_for_that_cause() -> None:
    """A reading and a cause of it give one remedy: "the same side" could be the supply's."""
    reading = {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "> 300 ms"}
    device = {"type": "A", "rated_residual_current": "30 mA"}
    asked = {"device": device, "readings": [reading], "circuit": {"seen_to_open": True}}

    assert run("readings", asked)["findings"][0]["do_next"] == CAUSES["timer-ran-on"].do_next
