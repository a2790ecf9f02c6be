"""Leakage and uncertainty never excuse each other."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from checkers import run
from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.limits.limit import Limit
from checkers.judgement.case import Case

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}
TIME = {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "28 ms"}
WORSE = [{}, *({"current_uncertainty": f"{one} mA"} for one in (0.3, 3, 5, 10, 20))]


def ramp(value: str) -> dict[str, str]:
    """Return a trip current on AC."""
    return {"test": "ramp", "waveform": "ac", "value": value}


def reply(*readings: dict[str, Any], **more: Any) -> dict[str, Any]:
    """Return the reply on some readings of a 30 mA type A device."""
    asked = {"code": "gb", "on": "2026-01-01", "device": DEVICE, "readings": readings}
    return run("readings", {**asked, **more})


def outcome(*readings: dict[str, Any], **more: Any) -> str:
    """Return the outcome of some readings."""
    return str(reply(*readings, **more)["outcome"])


@pytest.mark.parametrize("instrument", WORSE)
@pytest.mark.parametrize("leakage", ["0.5 mA", "4 mA", "9 mA"])
@pytest.mark.parametrize("loads", ["on", "unknown"])
def test_no_leakage_is_hidden_by_a_worse_instrument(
    loads: str, leakage: str, instrument: dict[str, str]
) -> None:
    """Leakage adds to the test current, however inexact the instrument is."""
    circuit = {"loads": loads, "standing_leakage": leakage}

    assert outcome(TIME, circuit=circuit, instrument=instrument) == "cannot-say"


def test_no_leakage_flows_with_the_loads_off_and_none_where_none_was_measured() -> None:
    """With the loads disconnected, or a leakage of nothing, a sound time passes."""
    off = {"loads": "off", "standing_leakage": "9 mA"}

    assert outcome(TIME, circuit=off) == "pass"
    assert outcome(TIME, circuit={"loads": "on", "standing_leakage": "0 mA"}) == "pass"


@pytest.mark.parametrize(
    ("value", "leakage", "expected"),
    [
        ("22 mA", "2 mA", "pass"),
        ("22 mA", "7 mA", "cannot-say"),
        ("27 mA", "1 mA", "cannot-say"),
        ("40 mA", "2 mA", "fail"),
        ("34 mA", "2 mA", "borderline"),
        ("40 mA", "15 mA", "cannot-say"),
    ],
)
def test_leakage_leaves_a_ramp_as_far_open_as_it_may_move_it(
    value: str, leakage: str, expected: str
) -> None:
    """15 to 30 mA (IEC 61008-1), 3 mA of uncertainty: passes from 17.5 to 27.5 mA, fails beyond
    32.5 mA (1.645 standard uncertainties of 1.5 mA); the leakage moves the reading both ways.
    """
    circuit = {"loads": "on", "standing_leakage": leakage}

    assert outcome(ramp(value), circuit=circuit) == expected


@pytest.mark.parametrize("instrument", WORSE)
def test_readings_that_contradict_do_so_by_any_instrument(instrument: dict[str, str]) -> None:
    """It trips at 24 mA applied at once, or it needs 31 mA: a worse instrument settles neither."""
    below = {"test": "trip-time", "current": "20 mA", "waveform": "ac", "value": "60 ms"}
    found = reply(below, ramp("27 mA"), TIME, instrument=instrument)["findings"]

    assert [one["about"] for one in found if "below the one the ramp" in one["says"]]


def test_leakage_excuses_a_trip_only_where_it_can_make_one() -> None:
    """At 6 mA with 4 mA of leakage a 30 mA device still must hold: 15 mA by IEC 61008-1."""
    tripped = {"test": "no-trip", "current": "6 mA", "waveform": "ac", "value": "tripped"}

    assert outcome(tripped, circuit={"loads": "on", "standing_leakage": "4 mA"}) == "fail"
    assert outcome(tripped, circuit={"loads": "on", "standing_leakage": "10 mA"}) == "cannot-say"


def a_case(rated: float | None = 30.0) -> Case:
    """Return a type A device tested with an instrument of which nothing is said."""
    device = Device(type="A", rated_residual_current=rated)
    return Case(device, Circuit(), Instrument(), CODES["gb"], date(2026, 1, 1))


def test_an_uncertainty_is_of_each_end_of_a_time_and_of_the_rating_of_a_current() -> None:
    """10 % of the limit for a time, 10 % of the rating for a current (IEC 61557-6)."""
    assert a_case().uncertainty_near(Limit("ms", 130.0, 500.0)) == pytest.approx((13, 50))
    assert a_case().uncertainty_near(Limit("mA", 15.0, 30.0)) == pytest.approx((3, 3))
    assert a_case(None).uncertainty_near(Limit("mA", 3.0, 6.0)) == pytest.approx((0.6, 0.6))


def test_no_uncertainty_is_made_up_for_another_quantity() -> None:
    """The instrument's uncertainties are of times and currents."""
    with pytest.raises(ValueError, match="V"):
        a_case().uncertainty_near(Limit("V", at_most=50.0))
