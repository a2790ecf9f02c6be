"""Devices in series, against published figures and worked examples."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run
from checkers.judgement.series.conditions import drift_rate

POINT = {"load": "ev-charge-point", "dc_protection": "rdc-dd"}


def device(name: str, below: str, kind: str, rated: str, delay: str = "none") -> dict[str, str]:
    """Return a device of a request."""
    return {
        "id": name,
        "below": below,
        "type": kind,
        "rated_residual_current": rated,
        "delay": delay,
    }


def answer(devices: list[dict[str, str]], loads: list[dict[str, Any]], **more: Any) -> Any:
    """Return the answer on a tree."""
    return run("series", {"devices": devices, "loads": loads, **more})["answer"]


@pytest.mark.parametrize(
    ("kind", "rated", "tolerates"),
    [
        ("AC", "30 mA", 0.0),
        ("A", "30 mA", 6.0),
        ("F", "30 mA", 10.0),
        ("B", "10 mA", 10.0),
        ("B", "30 mA", 12.0),
        ("B", "100 mA", 40.0),
        ("B", "300 mA", 120.0),
        ("B", "500 mA", 200.0),
    ],
)
def test_what_each_type_bears(kind: str, rated: str, tolerates: float) -> None:
    """BS 7671:2018+A2:2022, 531.3.3, notes 1 to 3: 6 mA, 10 mA, 0.4 IΔn or 10 mA, the higher."""
    found = answer([device("a", "", kind, rated)], [{"below": "a", "load": "resistive"}])

    assert {"value": tolerates, "unit": "mA"} == found["devices"][0]["tolerates"]


def test_a_30_ma_type_b_lets_almost_60_ma_pass() -> None:
    """An open handbook of electrical installation: DC passes up to twice the rating, 60 mA.

    It adds that a device in series that is not of type B will not work correctly with that.
    """
    devices = [device("up", "", "A", "300 mA", "S"), device("b", "up", "B", "30 mA")]
    (up, b) = answer(devices, [{"below": "b", "load": "three-phase-drive"}])["devices"]

    assert [one["greatest_unseen_dc"]["value"] for one in (up, b)] == [60.0, 60.0]
    assert [up["verdict"], b["verdict"]] == ["fail", "pass"]


@pytest.mark.parametrize(("kind", "verdict"), [("A", "fail"), ("F", "fail"), ("B", "pass")])
def test_two_charge_points_give_12_ma_and_call_for_a_type_b(kind: str, verdict: str) -> None:
    """A trade article on vehicle charging: two give up to 12 mA, so the device above is type B."""
    found = answer([device("up", "", kind, "30 mA")], [{"below": "up", "count": 2, **POINT}])

    assert (12.0, verdict) == (
        found["devices"][0]["greatest_unseen_dc"]["value"],
        found["devices"][0]["verdict"],
    )


def test_a_charge_point_may_hold_a_type_b_only_below_a_type_b_or_nothing() -> None:
    """GB 39752-2024, 5.3.3.1: type B only if the device above is at least type B, or is none."""
    own = {"below": "up", "load": "ev-charge-point", "dc_protection": "type-b"}
    verdicts = [
        answer([device("up", "", kind, "30 mA")], [own])["devices"][0]["verdict"]
        for kind in ("AC", "A", "F", "B")
    ]

    assert verdicts == ["fail", "fail", "fail", "pass"]


def test_detection_is_tested_from_two_to_six_milliampere_in_thirty_seconds() -> None:
    """IEC 62955:2018, 9.9.2.1: the slowest rise tested is (6 − 2) mA / 30 s = 0.13 mA/s."""
    assert drift_rate() == pytest.approx(4 / 30)
    assert pytest.approx(0.13, abs=0.005) == drift_rate()


def test_the_slow_drift_is_named_wherever_detection_bounds_the_dc() -> None:
    """One certified detector let pass at least 15 mA where it rose more slowly (one report)."""
    with_detection = run(
        "series", {"devices": [device("a", "", "A", "30 mA")], "loads": [{"below": "a", **POINT}]}
    )
    without = run(
        "series",
        {
            "devices": [device("a", "", "A", "30 mA")],
            "loads": [{"below": "a", "load": "resistive"}],
        },
    )

    assert any("0.13 mA a second" in one and "15 mA" in one for one in with_detection["cautions"])
    assert not any("0.13 mA a second" in one for one in without["cautions"])


def test_limited_selectivity_of_detection_on_pulsating_dc_is_named() -> None:
    """IEC 62955:2018, 6: the maker states it for a 30 mA type A or F above; not for others."""
    said = {
        (kind, rated): any(
            "On pulsating DC" in one
            for one in run(
                "series",
                {
                    "devices": [device("a", "", kind, rated)],
                    "loads": [{"below": "a", **POINT}],
                },
            )["cautions"]
        )
        for kind, rated in (("A", "30 mA"), ("F", "30 mA"), ("B", "30 mA"), ("A", "100 mA"))
    }

    assert list(said.values()) == [True, True, False, False]


@pytest.mark.parametrize(
    ("system", "upper", "expected"),
    [
        ("tn", ("100 mA", "S"), (40.0, 40.0)),
        ("tt", ("100 mA", "S"), (40.0, 50.0)),
        ("tt", ("300 mA", "S"), (40.0, 50.0)),
    ],
)
def test_times_at_the_fault_of_each_system(
    system: str, upper: tuple[str, str], expected: tuple[float, float]
) -> None:
    """A printed primer: in TT 230/50 = 4.6 times the rating flows, in TN far more than five.

    The times are those of IEC 61008-1 as two makers reprint them: general 0.04 s from five
    times the rating, S at least 0.05 s at five times and 0.04 s from 5 A.
    """
    devices = [device("up", "", "A", *upper), device("low", "up", "A", "30 mA")]
    loads = [{"below": "low", "load": "resistive"}]
    (row,) = answer(devices, loads, system=system)["pairs"]

    assert expected == (row["lower_opens_within"]["value"], row["upper_holds_for"]["value"])
    assert row["selective"] == "yes"


@pytest.mark.parametrize(
    ("upper", "lower", "kept"),
    [
        ("100 mA", "30 mA", True),
        ("300 mA", "100 mA", True),
        ("100 mA", "50 mA", False),
        ("30 mA", "30 mA", False),
    ],
)
def test_the_ratio_of_three_is_asked_for_beside_the_delay(
    upper: str, lower: str, kept: bool
) -> None:
    """IEC 60364-5-53, 535 and 536, as a maker's guide states it: type S and at least 3 to 1."""
    devices = [device("up", "", "A", upper, "S"), device("low", "up", "A", lower)]
    found = run("series", {"devices": devices, "loads": [{"below": "low", "load": "resistive"}]})
    (finding,) = (one for one in found["findings"] if one["judges"] == "selectivity")

    assert kept == ("enough, 3 is asked for" in finding["says"])


def test_each_verdict_cites_the_table_of_what_a_type_bears() -> None:
    """IEC 60364-5-53, 531.3.3."""
    reply = run(
        "series", {"devices": [device("a", "", "A", "30 mA")], "loads": [{"below": "a", **POINT}]}
    )
    cited = {(one["document"], one["clause"]) for one in reply["findings"][0]["sources"]}

    assert ("IEC 60364-5-53", "531.3.3") in cited
