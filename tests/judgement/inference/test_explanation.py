"""Causes weighed: patterns that tell, and what must not matter."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from checkers.domain.device.placed_readings import PlacedReading
from checkers.judgement.case import Case
from checkers.judgement.inference.explanation import explain
from tests.judgement.inference.a_case import case, reading, time


def chances(readings: Sequence[PlacedReading], of: Case | None = None) -> dict[str, float]:
    """Return the probability of each cause."""
    return {one.code: one.probability for one in explain(readings, of or case()).causes}


def leading(readings: Sequence[PlacedReading], of: Case | None = None) -> str:
    """Return the most likely cause."""
    return next(iter(chances(readings, of)))


SOUND = [
    reading("no-trip", "> 1999 ms", multiple=0.5),
    time("28 ms", phase="0"),
    reading("ramp", "22 mA"),
    reading("button", "operates"),
]


def test_probabilities_sum_to_one_and_come_in_order() -> None:
    """They are a distribution, the most likely first."""
    found = list(chances(SOUND).values())

    assert sum(found) == pytest.approx(1.0)
    assert found == sorted(found, reverse=True)


def test_sound_readings_mean_good_order() -> None:
    """Nothing else is likely."""
    assert chances(SOUND)["in-good-order"] > 0.85


def test_the_same_readings_get_the_same_answer() -> None:
    """No chance is involved."""
    assert chances(SOUND) == chances(list(SOUND))


def test_no_readings_leave_what_was_known_before() -> None:
    """The prior shares come back."""
    assert chances([])["in-good-order"] == pytest.approx(0.79, abs=0.03)


@pytest.mark.parametrize(
    ("readings", "cause"),
    [
        ([time("28 ms"), reading("button", "does not operate")], "button-failed"),
        ([time("no trip"), time("no trip", 5), reading("button", "dead")], "does-not-open"),
        ([time("180 ms"), time("28 ms"), time("20 ms", 5)], "slow-mechanism"),
        ([reading("no-trip", "tripped", multiple=0.5), reading("ramp", "9 mA")], "leakage-adds"),
        ([time("> 300 ms", 1), reading("ramp", "38 mA"), time("24 ms", 5)], "trips-too-high"),
    ],
    ids=lambda one: one if isinstance(one, str) else "",
)
def test_a_plain_pattern_leads_to_its_cause(readings: list[PlacedReading], cause: str) -> None:
    """Common practice, no source."""
    assert cause == leading(readings)


def test_the_order_of_operations_matters() -> None:
    """Slow first and then quick is a sticking mechanism; quick first and then slow is not."""
    slow_first = chances([time("180 ms"), time("28 ms"), time("27 ms")])
    slow_last = chances([time("28 ms"), time("27 ms"), time("180 ms")])

    assert slow_first["slow-mechanism"] > 5 * slow_last["slow-mechanism"]


def test_measured_dc_points_at_blinding() -> None:
    """50 mA through type AC, no trip at the rating, button works."""
    readings = [
        time("> 300 ms"),
        reading("ramp", "no trip by 30 mA"),
        reading("button", "operates"),
    ]
    blinded = case({"type": "AC"}, {"dc_residual": "50 mA", "loads": "on"})

    assert leading(readings, blinded) == "blinded-by-dc"


def test_dc_does_not_matter_with_the_loads_off() -> None:
    """What the loads make does not flow: the device itself must be at fault."""
    readings = [time("> 300 ms", loads="off"), reading("ramp", "40 mA", loads="off")]

    assert leading(readings, case(circuit={"dc_residual": "50 mA"})) != "blinded-by-dc"


def test_a_selective_device_that_trips_at_once_is_not_one() -> None:
    """Another device took the reading, or one without a delay is fitted."""
    found = chances([time("30 ms"), time("18 ms", 5)], case({"delay": "S"}))

    assert found["other-device-first"] + found["wrong-device"] > 0.99


def test_a_device_that_was_not_seen_to_open_did_not_trip() -> None:
    """A time was shown all the same: it belongs to another."""
    readings = [time("25 ms"), reading("ramp", "21 mA")]
    seen = chances(readings, case(circuit={"seen_to_open": "yes"}))["other-device-first"]
    unseen = chances(readings, case(circuit={"seen_to_open": "no"}))["other-device-first"]

    assert unseen > 20 * seen


def test_a_type_that_is_too_low_is_not_ruled_out_by_good_times() -> None:
    """Times that pass leave it about as likely as before."""
    before = chances([], case({"type": "AC"}))["type-too-low"]

    assert chances(SOUND, case({"type": "AC"}))["type-too-low"] > 0.7 * before


def prior_of(code: str, readings: Sequence[PlacedReading], loads: str) -> float:
    """Return how common a cause is before the readings, with 7.3 mA of leakage measured."""
    of = case(circuit={"loads": loads, "standing_leakage": "7.3 mA"})
    return next((one.prior for one in explain(readings, of).causes if one.code == code), 0.0)


@pytest.mark.parametrize(
    ("circuit", "each", "counts"),
    [
        ("off", ["off", "off"], False),
        ("off", ["off", "on"], True),
        ("on", ["off", "off"], True),
        ("unknown", [], True),
        ("off", [], False),
    ],
)
def test_what_loads_make_counts_where_they_may_have_been_on(
    circuit: str, each: list[str], counts: bool
) -> None:
    """In one test, or before the first: nowhere else does the leakage of the loads flow."""
    readings = [time("28 ms", loads=loads) for loads in each]

    assert (prior_of("leakage-adds", readings, circuit) > 0.25) is counts
