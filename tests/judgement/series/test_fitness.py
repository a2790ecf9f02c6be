"""A verdict on a device never improves for the worse, and never rests on nothing."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers import run
from checkers.domain.codes import CODES
from checkers.domain.verdicts import Outcome
from checkers.judgement.series.dc_flow import flow_through
from checkers.judgement.series.fitness import Fitness, judge_fitness
from tests.judgement.series.trees import arranged, trees

QUICK = settings(deadline=None)
ORDER = list(Outcome)


def judged(request: dict[str, Any]) -> list[Fitness]:
    """Return the fitness of each device of a request."""
    arrangement = arranged(request)
    return judge_fitness(arrangement, flow_through(arrangement))


@QUICK
@given(request=trees(), place=st.integers(0, 7))
def test_one_more_unprotected_source_never_improves_a_verdict(
    request: dict[str, Any], place: int
) -> None:
    """A drive more, wherever it is put."""
    below = f"d{place % len(request['devices'])}"
    more = {**request, "loads": [*request["loads"], {"below": below, "load": "three-phase-drive"}]}
    before, after = judged(request), judged(more)

    for one, other in zip(before, after, strict=True):
        if one.outcome is Outcome.FAIL:
            assert other.outcome is Outcome.FAIL


@QUICK
@given(request=trees())
def test_no_narrower_type_passes_above_a_type_b_or_an_unbounded_source(
    request: dict[str, Any],
) -> None:
    """The rule of the trade, whatever the tree."""
    arrangement = arranged(request)
    fitness = judge_fitness(arrangement, flow_through(arrangement))

    for place, one in enumerate(fitness):
        below = arrangement.below(place)
        narrow = not arrangement.devices[place].device.senses_smooth_dc
        if narrow and any(arrangement.devices[b].device.senses_smooth_dc for b in below):
            assert one.outcome is Outcome.FAIL


@QUICK
@given(request=trees())
def test_a_type_b_of_known_rating_is_never_blinded(request: dict[str, Any]) -> None:
    """It opens on smooth DC by itself."""
    arrangement = arranged(request)

    for device, one in zip(arrangement.devices, judged(request), strict=True):
        if device.device.senses_smooth_dc:
            assert one.outcome is Outcome.PASS


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("kind", ["AC", "A", "F", "unknown"])
def test_an_unprotected_source_never_passes_on_a_narrower_type(code: str, kind: str) -> None:
    """Under no code, and without a figure in the code nothing can be said."""
    request = {
        "code": code,
        "devices": [{"id": "a", "type": kind, "rated_residual_current": "30 mA"}],
        "loads": [{"below": "a", "load": "three-phase-drive"}],
    }
    reply = run("series", request)
    settled = "standing-dc" in CODES[code].tables and kind != "unknown"

    assert ("fail" if settled else "cannot-say") == reply["outcome"]


@pytest.mark.parametrize(
    ("device", "field"),
    [
        ({"type": "B"}, "devices[0].rated_residual_current"),
        ({"rated_residual_current": "30 mA"}, "devices[0].type"),
        ({"type": "B", "rated_residual_current": "30 mA", "form": "monitor"}, "devices[0].form"),
    ],
)
def test_what_decides_and_is_missing_is_named_by_field(device: dict[str, str], field: str) -> None:
    """Type, or rating of a type B, or a device that only warns."""
    request = {
        "devices": [{"id": "a", **device}],
        "loads": [{"below": "a", "load": "three-phase-drive"}],
    }
    finding = run("series", request)["findings"][0]

    assert finding["outcome"] == "cannot-say"
    assert field == finding["field"]


def test_detection_without_an_rcd_in_series_is_not_passed() -> None:
    """IEC 62955:2018, 4.1.1: the monitoring kind needs an RCD in series or built in."""
    request = {
        "devices": [{"id": "detector", "form": "rdc-dd"}],
        "loads": [{"below": "detector", "load": "ev-charge-point"}],
    }

    assert run("series", request)["outcome"] == "cannot-say"


def test_detection_on_other_equipment_is_not_taken_for_granted() -> None:
    """IEC 62955:2018 is for charge points: a drive's maker would have to state that it serves."""
    request = {
        "devices": [{"id": "a", "type": "A", "rated_residual_current": "30 mA"}],
        "loads": [{"below": "a", "load": "three-phase-drive", "dc_protection": "rdc-dd"}],
    }

    assert run("series", request)["outcome"] == "cannot-say"


def test_a_small_declared_value_does_not_make_a_drive_fit_for_a_type_a() -> None:
    """What flows in normal use says nothing of a fault on its link: ask, do not pass."""
    request = {
        "devices": [{"id": "a", "type": "A", "rated_residual_current": "30 mA"}],
        "loads": [{"below": "a", "load": "three-phase-drive", "dc_residual": "4 mA"}],
    }

    assert run("series", request)["outcome"] == "cannot-say"


def test_a_type_b_is_not_enough_where_the_maker_calls_for_a_type_b_plus() -> None:
    """The maker's word is the least, and a device of that type mends it."""
    request = {
        "devices": [{"id": "a", "type": "B", "rated_residual_current": "30 mA"}],
        "loads": [{"below": "a", "load": "three-phase-drive", "maker_says": "B+"}],
    }
    reply = run("series", request)

    assert reply["outcome"] == "fail"
    assert reply["answer"]["least_change"] == ["put a type B+ in place of a (type B)"]


def test_what_the_maker_of_a_charge_point_declares_counts_however_it_is_kept() -> None:
    """Within what a type A bears it passes, above it does not, and a type F bears more."""
    outcomes = {}
    for kind in ("A", "F"):
        for declared in ("6 mA", "8 mA"):
            request = {
                "devices": [{"id": "a", "type": kind, "rated_residual_current": "30 mA"}],
                "loads": [{"below": "a", "load": "ev-charge-point", "dc_residual": declared}],
            }
            outcomes[kind, declared] = run("series", request)["answer"]["devices"][0]["verdict"]

    assert outcomes == {
        ("A", "6 mA"): "pass",
        ("A", "8 mA"): "fail",
        ("F", "6 mA"): "pass",
        ("F", "8 mA"): "pass",
    }
