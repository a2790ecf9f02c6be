"""No guard of any kind of test lets a reading pass that it should stop."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import chain, combinations, product
from typing import Any

import pytest

from checkers import run
from checkers.domain.causes import CAUSES
from checkers.domain.device.deciding_inputs import DECIDING, Decides
from checkers.domain.device.readings import Test as Kind
from checkers.judgement.limits.demands import Must
from checkers.judgement.readings.guards import GUARDS, GUARDS_OF_DEMANDS, Guard

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


# What stops each kind of test, told here once more, so that nothing falls out of a list unseen.
READABLE = ("only_warns", "not_a_result")
MEASURED = (*READABLE, "word_of_a_button", "wrong_unit", "inputs_missing", "trip_not_seen")
STOPPED_BY: dict[str, tuple[str, ...]] = {
    "trip-time": (*MEASURED, "timer_ran_on", "too_quick"),
    "no-trip": MEASURED,
    "ramp": MEASURED,
    "button": READABLE,
    "unknown": ("only_warns", "inputs_missing"),
}
NEEDS: dict[str, tuple[str, ...]] = {
    "trip-time": ("waveform", "level", "rating", "type"),
    "no-trip": ("waveform", "level", "rating", "type"),
    "ramp": ("waveform", "rating", "type"),
    "button": (),
    "unknown": ("test",),
}
HALF_WAVE = {"waveform": "half-wave"}


@dataclass(frozen=True)
class Stop:
    """What must be stopped: what is changed in a good reading, and the code that then stands."""

    code: str
    reading: dict[str, Any] = field(default_factory=dict)
    device: dict[str, Any] = field(default_factory=dict)
    circuit: dict[str, Any] = field(default_factory=dict)


def values(code: str, *texts: str, **circuit: bool) -> list[Stop]:
    """Return a stop for each value."""
    return [Stop(code, {"value": text}, {}, circuit) for text in texts]


NO_RESULT = [
    *values("not-tested", "not tested"),
    *values("test-not-completed", "test not completed", "n/a"),
    *values("result-unclear", "28/18"),
]
QUICK = values("too-quick", "1.5 ms", "< 3 ms", "2.9 ms")
RAN_ON = values("timer-ran-on", "> 1999 ms", "no trip", seen_to_open=True)
HELD = {"multiple": "0.5"}  # at half the rating a device that holds would pass
OTHER_UNIT = {"trip-time": "22 mA", "no-trip": "> 1999 mA", "ramp": "20 ms"}
SHOWN = {"trip-time": "28 ms", "no-trip": "28 ms", "ramp": "22 mA"}
# By what decides, what is left out and the code that asks for it: what is asked for first comes
# first, so that each entry is seen to be there.
LEFT: dict[str, list[Stop]] = {
    "test": [Stop("test-missing")],
    "waveform": [Stop("waveform-missing", {"waveform": "unknown"})],
    "level": [
        Stop("multiple-missing", {"multiple": ""}),
        Stop("multiple-missing", {"multiple": ""}, {"rated_residual_current": ""}),
    ],
    "rating": [
        Stop("rating-missing", {}, {"rated_residual_current": ""}),
        Stop("rating-missing", HALF_WAVE, {"rated_residual_current": "", "type": "unknown"}),
    ],
    "type": [Stop("type-missing", HALF_WAVE, {"type": "unknown"})],
}


def stops_of(guard: str, test: str) -> list[Stop]:
    """Return what a guard must stop in a kind of test."""
    return {
        "only_warns": [Stop("device-only-warns", {}, {"form": "monitor"})],
        "not_a_result": NO_RESULT,
        "word_of_a_button": values("word-without-figure", "operates", "does not operate"),
        "wrong_unit": values("wrong-unit", OTHER_UNIT.get(test, "")),
        "inputs_missing": [one for name in NEEDS[test] for one in LEFT[name]],
        "timer_ran_on": [replace(one, reading=one.reading | HELD) for one in RAN_ON],
        "trip_not_seen": values(
            "trip-not-seen", "tripped", SHOWN.get(test, ""), seen_to_open=False
        ),
        "too_quick": [*QUICK, *(replace(one, reading=one.reading | HELD) for one in QUICK)],
    }[guard]


def stopped_cases() -> Iterator[Any]:
    """Yield each guard of each kind of test, with each thing that it must stop."""
    for test, guards in STOPPED_BY.items():
        for guard in guards:
            for place, stop in enumerate(stops_of(guard, test)):
                yield pytest.param(test, stop, id=f"{test}: {guard} {place}")


# A current at which the device must trip, may do either, and of which no limit is known: what a
# test is called does not tell, so each is a no-trip test here.
AT: dict[Must, dict[str, str]] = {
    Must.TRIP: {"multiple": "1"},
    Must.EITHER: {"multiple": "", "current": "22 mA"},
    Must.NOT_KNOWN: {"multiple": "1", "waveform": "smooth-dc"},
}


def stopped_at_a_demand() -> Iterator[Any]:
    """Yield each guard of each demand, with each thing that it must stop."""
    by_guard = {"timer_ran_on": RAN_ON, "too_quick": QUICK}
    for (must, level), (guard, stops) in product(AT.items(), by_guard.items()):
        for place, stop in enumerate(stops):
            at = replace(stop, reading=stop.reading | level)
            yield pytest.param("no-trip", at, id=f"{must}: {guard} {place}")


# On half wave the limit of a detection of DC goes by its kind, which only its maker tells.
OF_A_KIND = [
    pytest.param(
        test,
        Stop("kind-missing", HALF_WAVE, {"rated_residual_current": "6 mA", "form": "rdc-dd"}),
        id=f"{test}: kind_missing",
    )
    for test in ("trip-time", "no-trip", "ramp")
]


@pytest.mark.parametrize(("test", "stop"), [*stopped_cases(), *stopped_at_a_demand(), *OF_A_KIND])
def test_each_guard_stops_each_kind_of_test(test: str, stop: Stop) -> None:
    """What a guard is there for is never a pass, and no fail either: the guard says why."""
    whole = {"test": test, **GOOD[test], **stop.reading}
    device = {"type": "A", "rated_residual_current": "30 mA", **stop.device}
    asked = {"device": device, "readings": [whole], "circuit": stop.circuit}

    found = run("readings", {"code": "gb", "on": "2026-11-24", **asked})["findings"]

    ours = [one for one in found if one["about"] != "trip not shown"]
    assert {(one["outcome"], one["code"]) for one in ours} == {
        ("cannot-say", f"reading.{stop.code}")
    }


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


def test_every_guard_is_tried_with_every_kind_of_test_that_it_stops() -> None:
    """A guard that is new, or a kind of test, a demand or an input that decides, gets its cases."""
    timed = {"timer_ran_on", "too_quick"}
    of_demands = dict.fromkeys(AT, timed) | {Must.HOLD: set()}

    assert {test: set(guards) for test, guards in STOPPED_BY.items()} == _names(GUARDS)
    assert of_demands == _names(GUARDS_OF_DEMANDS)
    assert {test.value: tuple(DECIDING[test]) for test in Kind} == NEEDS


def _names(guards: Mapping[Any, tuple[Guard, ...]]) -> dict[Any, set[str]]:
    return {key: {one.__name__ for one in listed} for key, listed in guards.items()}


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
