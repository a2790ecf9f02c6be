"""The lower device opens first where ratio and times say so, and nowhere else."""

from __future__ import annotations

from datetime import date
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers import run
from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device
from checkers.domain.verdicts import Outcome
from checkers.judgement.series.selectivity.fault_levels import Supply
from checkers.judgement.series.selectivity.pair_times import level_at, proven_from
from checkers.judgement.series.selectivity.selectivity import selectivity

DAY = date(2026, 11, 24)
CODE = CODES["iec"]
GENERAL = Device("A", 30.0)
SELECTIVE = Device("A", 100.0, "S")
RATINGS = st.sampled_from((10.0, 30.0, 100.0, 300.0, 500.0, 1000.0))
DELAYS = st.sampled_from(("none", "G", "S", 60.0, 150.0, 500.0))
TN = Supply("tn", None, 230.0, CODE, DAY)


def pair(upper: dict[str, str], lower: dict[str, str], **more: Any) -> dict[str, Any]:
    """Return the reply on two devices with a heater below."""
    request = {
        "devices": [
            {"id": "up", "type": "A", **upper},
            {"id": "low", "below": "up", "type": "A", **lower},
        ],
        "loads": [{"below": "low", "load": "resistive"}],
        **more,
    }
    return run("series", request)


def finding(reply: dict[str, Any]) -> dict[str, Any]:
    """Return the one finding on selectivity of a reply."""
    (found,) = (one for one in reply["findings"] if one["judges"] == "selectivity")
    return dict(found)


def test_at_each_level_the_times_are_those_of_the_tables() -> None:
    """IEC 61008-1, break and non-actuating times as reprinted: general 30 mA below S 100 mA."""
    expected = {
        150.0: (150.0, 60.0),  # 0.25 A may be the maker's choice for 40 ms
        200.0: (150.0, 60.0),
        300.0: (40.0, 50.0),
        500.0: (40.0, 50.0),
        5000.0: (40.0, 40.0),
        20000.0: (40.0, 40.0),
    }

    for current, times in expected.items():
        level = level_at(SELECTIVE, GENERAL, CODE, DAY, current)
        assert times == (level.opens_within, level.holds_for)


def test_below_half_its_rating_the_upper_must_not_operate() -> None:
    """Common to all types: the lower limit of the operating band is half the rating."""
    level = level_at(Device("A", 300.0), GENERAL, CODE, DAY, 140.0)

    assert level.proven
    assert level.holds_for == float("inf")


def test_the_proof_reaches_down_to_where_the_lower_is_fast() -> None:
    """From 0.25 A up the general device has opened within 40 ms, whichever option it is made to."""
    assert proven_from(SELECTIVE, GENERAL, CODE, DAY, 5000.0) == 250.0
    assert proven_from(Device("A", 100.0), GENERAL, CODE, DAY, 5000.0) is None


@given(RATINGS, DELAYS, RATINGS, DELAYS)
def test_nothing_is_selective_without_ratio_and_delay(
    above: float, delay: str | float, below: float, other: str | float
) -> None:
    """Whatever the devices: three times the rating, and a delay longer than the lower takes."""
    found = selectivity(Device("A", above, delay), Device("A", below, other), TN)

    if found.selective:
        assert above >= 3 * below
        assert delay not in {"none", "G"}
        assert found.level is not None
        assert (found.level.holds_for or 0.0) >= (found.level.opens_within or float("inf"))
    else:
        assert found.outcome(None) is not Outcome.PASS
        assert found.outcome(wanted=True) is not Outcome.PASS


@given(st.lists(RATINGS, min_size=3, max_size=3, unique=True).map(sorted))
def test_a_greater_ratio_is_never_worse(ratings: list[float]) -> None:
    """Above the same lower device, a greater rating of the same delay stays selective."""
    low, middle, high = ratings
    lower = Device("A", low)
    found = [selectivity(Device("A", one, "S"), lower, TN).selective for one in (middle, high)]

    assert all(bool(one) <= bool(other) for one, other in pairwise(found))


def test_it_fails_only_where_it_was_to_be_selective() -> None:
    """Missing selectivity is inconvenience: what nobody asked for is told, and not failed."""
    general = {"rated_residual_current": "30 mA"}
    told = pair(general, general)

    assert (told["outcome"], finding(told)["outcome"]) == ("cannot-say", "cannot-say")
    assert finding(told)["says"].startswith("Not selective")
    assert finding(pair(general, general, selective="yes"))["outcome"] == "fail"
    delayed = {"rated_residual_current": "100 mA", "delay": "S"}
    near = {"rated_residual_current": "50 mA"}
    assert finding(pair(delayed, near))["outcome"] == "fail"


def test_where_it_is_not_wanted_it_is_shown_and_not_judged() -> None:
    """The times stay in the answer."""
    general = {"rated_residual_current": "30 mA"}
    reply = pair(general, general, selective="no")

    assert reply["outcome"] == "pass"
    assert [one["selective"] for one in reply["answer"]["pairs"]] == ["no"]
    assert all(one["judges"] != "selectivity" for one in reply["findings"])


def test_a_missing_rating_is_named() -> None:
    """Without it there is no ratio."""
    reply = pair({"delay": "S"}, {"rated_residual_current": "30 mA"})

    assert finding(reply)["outcome"] == "cannot-say"
    assert finding(reply)["field"] == "devices[0].rated_residual_current"


def test_a_long_set_delay_of_the_lower_is_for_its_maker_to_state() -> None:
    """IEC 60947-2, annex B: above 0.06 s the maker states the break times (from memory)."""
    upper = {"rated_residual_current": "1 A", "delay": "500 ms", "form": "cbr"}
    lower = {"rated_residual_current": "300 mA", "delay": "300 ms", "form": "cbr"}
    found = finding(pair(upper, lower))

    assert found["outcome"] == "cannot-say"
    assert found["do_next"] == "Compare the makers' time-current curves."


@pytest.mark.parametrize(
    ("upper", "lower"),
    [
        ({}, {"delay": "300 ms", "form": "cbr"}),
        ({"delay": "S"}, {"delay": "300 ms", "form": "cbr"}),
        ({"delay": "100 ms", "form": "cbr"}, {"delay": "300 ms", "form": "cbr"}),
        ({}, {"delay": "G"}),
    ],
)
def test_an_upper_that_opens_while_the_lower_must_hold_is_never_selective(
    upper: dict[str, str], lower: dict[str, str]
) -> None:
    """The lower's own delay is longer, though its maker alone states when it opens."""
    rated = {"rated_residual_current": "300 mA"}, {"rated_residual_current": "100 mA"}
    found = finding(pair({**rated[0], **upper}, {**rated[1], **lower}, selective="yes"))

    assert found["outcome"] == "fail"
    assert found["says"].startswith("Not selective")


@pytest.mark.parametrize("form", ["rccb", "rcbo", "cbr", "modular"])
def test_up_to_30_ma_the_shortest_time_counts_from_a_quarter_ampere(form: str) -> None:
    """IEC 61008-1 as reprinted for RCCBs; for circuit-breakers the same note, from memory."""
    lower = Device("A", 10.0, "none", form)
    times = [level_at(SELECTIVE, lower, CODE, DAY, one).opens_within for one in (153.0, 250.0)]

    assert times == [150.0, 40.0]


def test_the_proof_is_told_in_three_digits() -> None:
    """Five times 33.33 mA are 166.65 mA."""
    upper = {"rated_residual_current": "100 mA", "delay": "S"}
    found = finding(pair(upper, {"rated_residual_current": "33.33 mA"}))

    assert "The tables prove it from 167 mA up" in found["says"]


def test_each_device_above_is_compared_and_helpers_are_not() -> None:
    """Three in a row make three pairs; 6 mA detection and monitors open on other grounds."""
    devices = [
        {"id": "1", "type": "A", "rated_residual_current": "300 mA", "delay": "S"},
        {"id": "2", "below": "1", "type": "A", "rated_residual_current": "100 mA"},
        {"id": "3", "below": "2", "type": "A", "rated_residual_current": "30 mA"},
        {"id": "detector", "below": "3", "form": "rdc-dd"},
        {"id": "watch", "below": "1", "form": "monitor"},
    ]
    loads = [{"below": "detector", "load": "ev-charge-point"}]
    pairs = run("series", {"devices": devices, "loads": loads})["answer"]["pairs"]

    assert {("1", "2"), ("2", "3"), ("1", "3")} == {(one["upper"], one["lower"]) for one in pairs}


@pytest.mark.parametrize(("system", "current"), [("tn", 5000.0), ("tt", 460.0)])
def test_the_fault_is_that_of_the_system(system: str, current: float) -> None:
    """In TT what 50 V and the rating allow as an electrode: 230/50 times 100 mA."""
    upper = {"rated_residual_current": "100 mA", "delay": "S"}
    reply = pair(upper, {"rated_residual_current": "30 mA"}, system=system)
    (row,) = reply["answer"]["pairs"]

    assert {"value": current, "unit": "mA"} == row["fault_current"]
