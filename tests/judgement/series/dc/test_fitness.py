"""A verdict on a device never improves for the worse, and never rests on nothing."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers import run
from checkers.domain.codes.registry import CODES
from checkers.domain.verdicts import Outcome
from checkers.judgement.series.dc.fitness import Fitness, judge_fitness
from checkers.judgement.series.dc.flow import flow_through
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
    """What flows in normal use says nothing of a fault on its link: as with a silent maker."""
    request = {
        "devices": [{"id": "a", "type": "A", "rated_residual_current": "30 mA"}],
        "loads": [{"below": "a", "load": "three-phase-drive", "dc_residual": "4 mA"}],
    }

    assert run("series", request)["outcome"] == "fail"


def test_a_type_b_is_not_enough_where_the_maker_calls_for_a_type_b_plus() -> None:
    """The maker's word is the least, and a device of that type mends it."""
    request = {
        "devices": [{"id": "a", "type": "B", "rated_residual_current": "30 mA"}],
        "loads": [{"below": "a", "load": "three-phase-drive", "maker_says": "B+"}],
    }
    reply = run("series", request)

    assert reply["outcome"] == "fail"
    assert reply["answer"]["least_change"] == ["put a type B+ in place of a (type B)"]


def test_what_the_maker_of_a_charge_point_declares_does_not_speak_for_the_vehicle() -> None:
    """Its detection keeps the vehicle to 6 mA, whatever is declared; without it nothing does."""
    outcomes: dict[str, set[str]] = {}
    for protection in ("none", "rdc-dd"):
        for declared in ("0 mA", "6 mA", "20 mA"):
            load = {"load": "ev-charge-point", "dc_protection": protection}
            request = {
                "devices": [{"id": "a", "type": "A", "rated_residual_current": "30 mA"}],
                "loads": [{"below": "a", **load, "dc_residual": declared}],
            }
            found = run("series", request)["answer"]["devices"][0]
            outcomes.setdefault(protection, set()).add(found["verdict"])

    assert outcomes == {"none": {"fail"}, "rdc-dd": {"pass"}}


@pytest.mark.parametrize("declared", [None, "0 mA", "10 mA", "20 mA"])
@pytest.mark.parametrize("where", ["built in", "in the tree"])
def test_detection_serves_charge_points_only(declared: str | None, where: str) -> None:
    """IEC 62955:2018: three-phase medical equipment behind it is open, whatever is declared."""
    built_in = where == "built in"
    devices = [
        {"id": "up", "form": "rdc-dd", "type": "A", "rated_residual_current": "6 mA"},
        {"id": "a", "below": "" if built_in else "up", "type": "A"},
    ]
    devices[1]["rated_residual_current"] = "30 mA"
    load = {"below": "a", "load": "medical", "supply": "three-phase", "dc_residual": declared}
    load["dc_protection"] = "rdc-dd" if built_in else "none"
    reply = run("series", {"devices": devices[built_in:], "loads": [load]})

    assert reply["outcome"] == "cannot-say"
    assert any("6 mA detection is made for charge points" in f["says"] for f in reply["findings"])


def test_the_figure_and_the_sentence_on_a_type_b_of_its_own_agree() -> None:
    """Twice its rating, 60 mA, for medical equipment as for any other, and for each piece."""
    for count, most in ((1, 60.0), (2, 120.0)):
        load = {"below": "m", "load": "medical", "dc_protection": "type-b", "count": count}
        for kind, verdict in (("B", "pass"), ("A", "fail")):
            devices = [{"id": "m", "type": kind, "rated_residual_current": "30 mA"}]
            request = {"devices": devices, "loads": [{**load, "dc_residual": "1 mA"}]}
            (row,) = run("series", request)["answer"]["devices"]

            assert verdict == row["verdict"]
            assert row["greatest_unseen_dc"]["value"] == (60.0 if kind == "B" else most)


def test_a_remark_tells_what_ordinary_electronics_make_of_it() -> None:
    """Up to 6 mA each, 12 mA with the charge point; 531.3.3 takes a type A for them."""
    loads = [
        {"below": "a", "load": "ev-charge-point", "dc_protection": "rdc-dd"},
        {"below": "a", "load": "switched-mode-supply", "count": 20},
    ]
    devices = [{"id": "a", "type": "A", "rated_residual_current": "30 mA"}]
    reply = run("series", {"code": "za", "devices": devices, "loads": loads})
    told = run("series", {"devices": devices, "loads": loads})
    (row,), finding = told["answer"]["devices"], told["findings"][0]

    assert "up to 6 mA each, 12 mA with one piece of them" in finding["says"]
    assert "this is a remark: measure" in finding["says"]
    assert row["with_ordinary_electronics"] == {"value": 12.0, "unit": "mA"}
    assert row["verdict"] == finding["outcome"] == "pass"
    assert "531.3.3" in {one["clause"] for one in finding["sources"]}
    assert "with_ordinary_electronics" in reply["answer"]["devices"][0]


def test_equipment_that_is_not_named_is_not_said_to_flow_through_itself() -> None:
    """A type B with no loads: what is on it is not named."""
    devices = [{"id": "c", "type": "B", "rated_residual_current": "30 mA"}]
    says = run("series", {"devices": devices})["findings"][0]["says"]

    assert "through c" not in says
    assert "equipment not named" in says


def test_no_sentence_has_two_stops() -> None:
    """What stands at the end of a sentence brings no stop of its own."""
    loads = [
        {"below": "a", "load": "three-phase-drive", "dc_protection": "rdc-dd"},
        {"below": "a", "load": "three-phase-drive", "id": "odd", "maker_says": "A"},
    ]
    devices = [{"id": "a", "type": "A", "rated_residual_current": "30 mA"}]

    for finding in run("series", {"devices": devices, "loads": loads})["findings"]:
        assert ".." not in finding["says"]
        assert " .:" not in finding["says"]
