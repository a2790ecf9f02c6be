"""Smooth DC adds up on its way to the supply, and a device that senses it caps it."""

from __future__ import annotations

from math import inf
from typing import Any

from hypothesis import given, settings

from checkers.judgement.series.dc.flow import flow_through
from checkers.judgement.series.dc.limits import dc_limits
from tests.judgement.series.trees import arranged, trees

QUICK = settings(deadline=None)


def device(name: str, below: str, kind: str, rated: str = "30 mA") -> dict[str, Any]:
    """Return a device of a request."""
    return {"id": name, "below": below, "type": kind, "rated_residual_current": rated}


def point(below: str, count: int = 1, protection: str = "rdc-dd") -> dict[str, Any]:
    """Return charge points on a device."""
    return {
        "below": below,
        "load": "ev-charge-point",
        "count": count,
        "dc_protection": protection,
    }


def highs(request: dict[str, Any]) -> list[float]:
    """Return the greatest smooth DC [mA] through each device."""
    return [one.bounds.high for one in flow_through(arranged(request))]


def test_detectors_add_up() -> None:
    """N charge points with 6 mA detection leave N times 6 mA."""
    for count in range(1, 12):
        request = {"devices": [device("a", "", "A")], "loads": [point("a", count)]}

        assert [6.0 * count] == highs(request)


def test_a_type_b_caps_what_comes_from_below() -> None:
    """Twice its rating at most, however much is below it.

    Less flows through it where less can come; what stands above it takes it for what it may
    let pass, whatever it feeds today (DGUV Information 203-006, 5.2).
    """
    devices = [device("top", "", "A", "300 mA"), device("b", "top", "B", "30 mA")]

    assert highs({"devices": devices, "loads": [point("b", 1, "none")]}) == [60.0, 60.0]
    assert highs({"devices": devices, "loads": [point("b", 30)]}) == [60.0, 60.0]
    assert highs({"devices": devices, "loads": [point("b", 2)]}) == [60.0, 12.0]


def test_several_type_b_add_up_above_them() -> None:
    """Each opens by itself alone: none sees what flows through the others."""
    devices = [device("top", "", "A", "300 mA")]
    devices += [device(f"b{n}", "top", "B", rated) for n, rated in enumerate(["30 mA", "100 mA"])]
    loads = [{"below": f"b{n}", "load": "three-phase-drive"} for n in range(2)]

    assert highs({"devices": devices, "loads": loads}) == [260.0, 60.0, 200.0]


def test_a_type_b_with_nothing_named_on_it_may_pass_twice_its_rating() -> None:
    """What is on it is not known, and it is there because of DC."""
    devices = [device("top", "", "A"), device("b", "top", "B")]

    assert highs({"devices": devices}) == [60.0, 60.0]


def test_a_device_that_senses_dc_above_limits_what_flows_below() -> None:
    """It opens before more can flow through a device under it."""
    devices = [device("b", "", "B"), device("a", "b", "A")]
    request = {"devices": devices, "loads": [{"below": "a", "load": "three-phase-drive"}]}

    assert highs(request) == [60.0, 60.0]


def test_only_the_fault_loop_limits_an_unprotected_source() -> None:
    """No figure is made up for it."""
    request = {"devices": [device("a", "", "A")], "loads": [point("a", 1, "none")]}

    assert [inf] == highs(request)


def test_ordinary_electronics_are_not_added_up() -> None:
    """Forty of them leave what one may leave, and nothing on top of a charge point's 6 mA."""
    supplies = {"below": "a", "load": "switched-mode-supply", "count": 40}

    assert highs({"devices": [device("a", "", "A")], "loads": [supplies]}) == [6.0]
    assert highs({"devices": [device("a", "", "A")], "loads": [supplies, point("a")]}) == [6.0]


def test_a_declared_value_counts_for_each_piece() -> None:
    """It takes the place of what ordinary electronics may leave, and adds up."""
    lamps = {"below": "a", "load": "led-lighting", "dc_residual": "1.5 mA", "count": 4}

    assert highs({"devices": [device("a", "", "A")], "loads": [lamps]}) == [6.0]


def test_a_declared_value_never_bounds_a_fault_on_a_link() -> None:
    """What a drive leaves in normal use says nothing of a fault in it; more declared counts."""
    drive = {"below": "a", "load": "three-phase-drive", "dc_residual": "1.5 mA"}
    solar = {"below": "a", "load": "pv-inverter", "separation": "none"}
    devices = [device("a", "", "A")]

    assert highs({"devices": devices, "loads": [drive]}) == [inf]
    assert highs({"devices": devices, "loads": [{**solar, "dc_residual": "3 mA"}]}) == [300.0]
    assert highs({"devices": devices, "loads": [{**solar, "dc_residual": "400 mA"}]}) == [400.0]


def test_detection_counts_whatever_it_feeds() -> None:
    """Two of them beside each other leave 12 mA, on ordinary equipment too; a heater has none."""
    devices = [device("a", "", "A")]
    devices += [{**device(f"r{n}", "a", "A", "6 mA"), "form": "rdc-dd"} for n in range(2)]
    loads = [{"below": f"r{n}", "load": "led-lighting", "count": 9} for n in range(2)]
    heaters = [{"below": f"r{n}", "load": "resistive"} for n in range(2)]

    assert highs({"devices": devices, "loads": loads})[0] == 12.0
    assert highs({"devices": devices, "loads": heaters})[0] == 0.0


def test_charging_cables_with_detection_add_up() -> None:
    """IEC 62752: the box in a mode 2 cable opens at 6 mA; two cables leave 12 mA."""
    cables = {"below": "a", "load": "ev-mode-2", "count": 2}

    assert highs({"devices": [device("a", "", "A")], "loads": [cables]}) == [12.0]


def test_type_f_devices_side_by_side_add_up_above_them() -> None:
    """Each is fit up to 10 mA (531.3.3, note 2), where equipment calls for a type F at all."""
    devices = [device("top", "", "F", "100 mA"), device("p", "top", "F"), device("q", "top", "F")]

    def through_the_top(load: str, **more: Any) -> float:
        loads = [{"below": name, "load": load, **more} for name in ("p", "q")]
        return highs({"devices": devices, "loads": loads})[0]

    assert through_the_top("heat-pump-single-phase") == 20.0
    assert through_the_top("heat-pump-single-phase", maker_says="A") == 6.0
    assert through_the_top("heat-pump-single-phase", dc_residual="2 mA") == 4.0
    assert through_the_top("led-lighting") == 6.0


def test_ordinary_electronics_beside_the_rest_are_told_and_not_added() -> None:
    """6 mA of a charge point, and 12 mA with one more piece of 6 mA."""
    supplies = {"below": "a", "load": "switched-mode-supply", "count": 40}
    devices = [device("a", "", "A")]
    (both,) = flow_through(arranged({"devices": devices, "loads": [supplies, point("a")]}))
    (alone,) = flow_through(arranged({"devices": devices, "loads": [supplies]}))

    assert both.with_ordinary == 12.0
    assert alone.with_ordinary is None


def test_parallel_paths_may_each_carry_all_and_count_once_above() -> None:
    """A load fed through two devices at once: each is judged with all, their sum is not taken."""
    devices = [
        device("top", "", "A", "300 mA"),
        device("p", "top", "A"),
        device("q", "top", "A"),
        device("joined", "p, q", "A"),
    ]

    assert highs({"devices": devices, "loads": [point("joined")]}) == [6.0] * 4


@QUICK
@given(request=trees())
def test_a_device_passes_on_at_least_what_each_device_below_lets_pass(
    request: dict[str, Any],
) -> None:
    """Through a device flows what flows through one below it, unless one opens before."""
    arrangement = arranged(request)
    through = flow_through(arrangement)

    for place, below in enumerate(arrangement.shape.children):
        for child in below:
            limits = dc_limits(arrangement.devices[child].device, arrangement.code, arrangement.day)
            passed = min(through[child].bounds.high, limits.opens_at or inf)
            assert through[place].bounds.high >= min(passed, through[place].ceiling.high)


@QUICK
@given(request=trees())
def test_one_more_source_of_dc_never_lessens_what_flows(request: dict[str, Any]) -> None:
    """Whatever the tree, a further charge point can only add."""
    more = {**request, "loads": [*request["loads"], point("d0")]}

    assert all(after >= before for before, after in zip(highs(request), highs(more), strict=True))
