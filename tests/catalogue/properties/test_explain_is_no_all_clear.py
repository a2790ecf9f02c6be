"""What `readings` fails, explain never calls in good order and never leaves in service."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from checkers import run

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}
LEAVE = "leave it in service"
BUTTON = {"test": "button", "value": "operates"}
PROTECTED = "whether people are protected"
BEARS = {"AC": 0, "A": 6, "F": 10}  # IEC 60364-5-53, 531.3.3: no smooth DC is declared for AC


def time(value: str, multiple: float = 1, **more: Any) -> dict[str, Any]:
    """Return a trip time on AC."""
    return {"test": "trip-time", "multiple": multiple, "waveform": "ac", "value": value} | more


def ramp(value: str, **more: Any) -> dict[str, Any]:
    """Return a ramp on AC."""
    return {"test": "ramp", "waveform": "ac", "value": value} | more


def explain(*readings: dict[str, Any], **more: Any) -> dict[str, Any]:
    """Return the reply for some readings of a 30 mA type A device, but for what is given."""
    request = {"code": "gb", "on": "2026-01-01", "device": DEVICE, "readings": list(readings)}
    reply = run("explain", request | more)
    assert reply["kind"] == "result", reply
    return reply


def words(reply: dict[str, Any]) -> str:
    """Return everything that is said to be done, in small letters."""
    said = [*reply["findings"], *reply["explanations"]]
    return " ".join(one.get("do_next", "") for one in said).lower()


def chances(reply: dict[str, Any]) -> dict[str, float]:
    """Return the probability of each cause that is listed."""
    return {one["code"]: one["probability"] for one in reply["explanations"]}


def is_no_all_clear(reply: dict[str, Any]) -> None:
    """Check what must hold of a device that fails."""
    assert "in-good-order" not in chances(reply)
    assert LEAVE not in words(reply)
    assert "good order" not in str(reply["answer"]["leading_cause"]).lower()
    assert reply["findings"][0]["about"] == PROTECTED
    assert "unprotected" in reply["cautions"][0]


FAILING = [
    [time("340 ms")],
    [time("600 ms")],
    [time("1500 ms")],
    [time("900 ms", 5)],
    [ramp("150 mA")],
    [ramp("600 mA")],
    [time("28 ms"), ramp("180 mA")],
    [time("28 ms"), {"test": "button", "value": "does not operate"}],
    [time("28 ms"), {"test": "no-trip", "multiple": 0.5, "waveform": "ac", "value": "tripped"}],
]


@pytest.mark.parametrize("readings", FAILING, ids=str)
def test_a_reading_that_fails_is_never_in_good_order(readings: list[dict[str, Any]]) -> None:
    """Not named, not leading, and nothing is left in service."""
    is_no_all_clear(explain(*readings))


def test_a_worse_time_never_makes_a_sound_device_or_a_wrong_reading_surer() -> None:
    """From just above the limit to a hundred times as long."""
    found = [
        chances(explain(time(f"{value} ms")))
        for value in (340, 380, 450, 600, 1000, 1500, 3000, 9000, 30000)
    ]
    wrong = [one.get("reading-wrong", 0.0) for one in found]

    assert all("in-good-order" not in one for one in found)
    assert all(later <= earlier + 0.02 for earlier, later in pairwise(wrong))


def test_a_slow_first_operation_is_the_surer_sticking_the_slower_it_is() -> None:
    """A time that stands out is less likely a misreading the longer it is."""
    sticking, sound = [], []
    for value in (60, 80, 100, 150, 200, 290, 340):
        found = chances(explain(time(f"{value} ms"), time("30 ms"), time("19 ms", 5)))
        sticking.append(found["slow-mechanism"])
        sound.append(found.get("in-good-order", 0.0))

    assert all(b >= a - 0.02 for a, b in pairwise(sticking)), sticking
    assert sticking[-1] > 0.9
    assert max(sound[-3:]) == 0.0


@pytest.mark.parametrize(("kind", "bears"), BEARS.items())
@pytest.mark.parametrize("times", [1.5, 2.0, 5.0])
def test_dc_beyond_what_the_type_bears_is_a_danger_whatever_the_readings(
    kind: str, bears: float, times: float
) -> None:
    """The readings pass, with the loads off, and the device is not in order."""
    reply = explain(
        time("28 ms", loads="off"),
        ramp("22 mA", loads="off"),
        device=DEVICE | {"type": kind},
        circuit={"loads": "on", "dc_residual": f"{max(1.0, bears) * times:g} mA"},
    )

    is_no_all_clear(reply)


@pytest.mark.parametrize(("dc", "trips"), [(12, 40), (25, 45), (20, 36), (12, 31)])
def test_dc_beyond_the_type_with_a_ramp_that_rises_with_the_loads_is_blinding(
    dc: float, trips: float
) -> None:
    """Twice the DC the type bears flows, and with it the trip current rises."""
    readings = [ramp("22 mA", loads="off"), ramp(f"{trips} mA", loads="on")]
    if trips == 40:
        readings.append(time("> 300 ms", loads="on"))
    reply = explain(*readings, circuit={"loads": "on", "dc_residual": f"{dc} mA"})

    is_no_all_clear(reply)
    assert next(iter(chances(reply))) in {"blinded-by-dc", "type-too-low"}
    assert trips == 31 or next(iter(chances(reply))) == "blinded-by-dc"
    assert reply["explanations"][0]["for"][0].startswith(f"{dc} mA of smooth DC was measured")
    assert "6 mA" in reply["explanations"][0]["for"][0]
    assert "is blinded" not in str(reply["explanations"])


def test_a_reading_that_nothing_explains_is_said_to_be_unexplained() -> None:
    """Thirty seconds are no fault that the model knows: they fail all the same."""
    said = " ".join(one["says"] for one in explain(time("30 s"))["findings"])

    assert "Not explained" in said
    assert "then replace" in words(explain(time("30 s")))


@pytest.mark.parametrize("kind", ["AC", "A", "F", "B", "unknown"])
def test_faultless_readings_raise_no_alarm_by_what_is_common_alone(kind: str) -> None:
    """Type AC with every reading in order: its type is a question, no finding of danger."""
    reply = explain(
        {"test": "no-trip", "multiple": 0.5, "waveform": "ac", "value": "> 1999 ms"},
        time("28 ms", phase="0"),
        time("24 ms", phase="180"),
        time("15 ms", 5),
        ramp("22 mA"),
        {"test": "button", "value": "operates"},
        device=DEVICE | {"type": kind},
    )

    assert PROTECTED not in {one["about"] for one in reply["findings"]}
    assert next(iter(chances(reply))) == "in-good-order"


@pytest.mark.parametrize("readings", [[time("28 ms")], *FAILING], ids=str)
def test_what_is_listed_sums_to_one(readings: list[dict[str, Any]]) -> None:
    """Causes too unlikely to be listed stand together in one line."""
    listed = explain(*readings)["explanations"]

    assert sum(one["probability"] for one in listed) == pytest.approx(1.0, abs=1e-6)
    assert all(one["probability"] >= 0.0 for one in listed)


def test_what_is_open_is_said_beside_leaving_it_in_service() -> None:
    """A borderline time, or one whose waveform is not given, settles nothing yet."""
    for reading in (time("301 ms"), time("28 ms", waveform="unknown")):
        reply = explain(reading)
        if LEAVE in words(reply):
            assert "open" in words(reply)


OFF = {"loads": "off"}
DELAYED = [time("210 ms"), time("220 ms"), time("72 ms", 5), time("75 ms", 5), ramp("72 mA")]


def half_wave(value: str, sign: str) -> dict[str, Any]:
    """Return a trip time on a half wave of one sign."""
    return time(value, waveform="half-wave", phase=sign)


@pytest.mark.parametrize(
    ("cause", "readings"),
    [
        ("erratic-mechanism", [time(f"{one} ms", phase="0") for one in (24, 180, 26, 240, 23)]),
        ("erratic-mechanism", [time("28 ms"), time("250 ms"), time("27 ms")]),
        (
            "fails-on-one-start",
            [time("26", phase="0"), time(">300", phase="180")] * 2,
        ),
        (
            "fails-on-one-start",
            [
                *(time(one, phase="0") for one in ("26", "25", "24", "27")),
                time(">300", phase="180"),
            ],
        ),
        (
            "fails-on-one-start",
            [half_wave("30 ms", "+"), half_wave("> 300 ms", "-")] * 2,
        ),
    ],
    ids=["now and then", "second operation", "one start", "one start, once", "one half wave"],
)
def test_a_device_that_fails_by_chance_or_by_start_is_named_as_such(
    cause: str, readings: list[dict[str, Any]]
) -> None:
    """Common practice: neither in good order, nor a timer that ran on, and a danger first."""
    reply = explain(*readings, circuit=OFF)
    found = chances(reply)

    assert next(iter(found)) == cause
    assert found.get("timer-ran-on", 0.0) < 0.2
    assert found.get("in-good-order", 0.0) < 0.05
    assert reply["findings"][0]["about"] == PROTECTED


@pytest.mark.parametrize(
    ("device", "readings"),
    [
        ({"type": "A", "rated_residual_current": "100 mA"}, DELAYED),
        (
            {"type": "AC", "rated_residual_current": "300 mA"},
            [time("240 ms"), time("238 ms"), time("81 ms", 5)],
        ),
    ],
    ids=["100 mA", "300 mA"],
)
def test_the_times_of_a_selective_device_are_no_sticking_mechanism(
    device: dict[str, Any], readings: list[dict[str, Any]]
) -> None:
    """IEC 61008-1: 130 to 500 ms at the rating and 50 to 150 ms at five times, type S."""
    reply = explain(*readings, device=device | {"delay": "none"})

    assert next(iter(chances(reply))) == "wrong-device"
    assert reply["next_test"]["test"] == "read rating, type and delay on the device itself"


def test_the_button_does_not_say_that_the_timed_tests_opened_it() -> None:
    """Nobody saw the device open at ×1 and ×5; the button worked, which is another thing."""
    tests = [time("> 300 ms"), time("> 300 ms", 5)]
    button = {"test": "button", "value": "operates"}
    unseen = {"loads": "off", "seen_to_open": False}
    said = chances(explain(*tests, button, circuit=unseen))
    unsaid = chances(explain(*tests, button, circuit={"loads": "off"}))

    assert said.get("timer-ran-on", 0.0) < 0.1 * unsaid["timer-ran-on"]
    assert next(iter(said)) != "timer-ran-on"


# BS 7671:2018+A2:2022, 643.8 asks for one AC test at the rating, 643.10 for the button.
@pytest.mark.parametrize(
    ("readings", "named"),
    [
        ([ramp("21 mA")], ["×1 trip time on AC (BS 7671)", "test button (BS 7671)"]),
        ([time("26 ms")], ["test button (BS 7671)"]),
        ([time("26 ms"), BUTTON], []),
    ],
    ids=["ramp", "time", "time and button"],
)
def test_no_device_stays_in_service_before_the_tests_of_the_code(
    readings: list[dict[str, Any]], named: list[str]
) -> None:
    """The very tests that `readings` names as still to do stand before leaving it in service."""
    request = {"code": "gb", "on": "2026-11-24", "device": DEVICE, "readings": readings}
    judged, said = run("readings", request), words(explain(*readings, on="2026-11-24"))

    assert judged["outcome"] == "pass"
    assert named == [one["words"] for one in judged["still_to_do"]]
    assert LEAVE in said
    assert ("still to do: " in said) is bool(named)
    assert all(one.lower() in said for one in named)
