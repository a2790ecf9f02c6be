"""A rule that names equipment asks for a small device, and for one of its own."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run

POINT = {"below": "a", "load": "ev-charge-point", "dc_protection": "rdc-dd"}


def ruled(
    rated: str | None, loads: list[dict[str, Any]], code: str = "iec", kind: str = "A"
) -> list[dict[str, Any]]:
    """Return the findings by the code on one device with some loads."""
    device = {"id": "a", "type": kind, "rated_residual_current": rated}
    reply = run("series", {"code": code, "devices": [device], "loads": loads})
    return [one for one in reply["findings"] if one["judges"] == "installation-code"]


@pytest.mark.parametrize(
    ("rated", "expected"),
    [
        ("10 mA", "pass"),
        ("30 mA", "pass"),
        ("31 mA", "cannot-say"),
        ("300 mA", "cannot-say"),
        (None, "cannot-say"),
    ],
)
def test_a_charge_point_passes_on_a_device_of_30_ma_only(rated: str | None, expected: str) -> None:
    """IEC 60364-7-722:2018, 722.531.2.101: an RCD of its own of 30 mA or less."""
    (found,) = ruled(rated, [POINT])

    assert found["outcome"] == expected
    assert (found.get("do_next") == "Read IΔn on the device.") == (rated is None)
    assert found["says"].endswith("It also opens all live conductors: see that it does.")


def test_what_is_not_listed_may_be_built_in() -> None:
    """So it is asked about, with the rating that the rule allows."""
    (found,) = ruled("300 mA", [POINT])

    assert "No device of 30 mA or less is listed for it alone" in found["says"]
    assert "built in" in found["do_next"]


@pytest.mark.parametrize("loads", [[{**POINT, "count": 2}], [POINT, {**POINT, "id": "two"}]])
def test_several_charge_points_on_one_device_are_never_a_bare_pass(
    loads: list[dict[str, Any]],
) -> None:
    """On one 30 mA type B: each has its own, or none."""
    found = ruled("30 mA", loads, kind="B")

    assert {one["outcome"] for one in found} == {"cannot-say"}
    assert len(found) == len(loads)


def test_one_shared_with_other_circuits_fails() -> None:
    """The rule asks for a device of its own."""
    (found,) = ruled("30 mA", [POINT, {"below": "a", "load": "resistive"}])

    assert found["outcome"] == "fail"
    assert "feeds other circuits as well" in found["says"]


def test_a_small_device_anywhere_above_serves_a_rule_on_the_rating_alone() -> None:
    """IEC 60364-7-710: 30 mA on final circuits up to 32 A; one above gives it too."""
    devices = [
        {"id": "up", "type": "A", "rated_residual_current": "30 mA"},
        {"id": "a", "below": "up", "type": "A", "rated_residual_current": "100 mA"},
    ]
    load = {"below": "a", "load": "medical"}

    def ratings(devices: list[dict[str, Any]]) -> list[str]:
        found = run("series", {"devices": devices, "loads": [load]})["findings"]
        return [one["outcome"] for one in found if "rated residual" in one["about"]]

    assert ratings(devices) == []
    assert ratings([{**devices[1], "below": ""}]) == ["cannot-say"]


@pytest.mark.parametrize(
    ("code", "load", "rated"),
    [
        ("au", "medical", "30 mA"),
        ("nz", "medical", "30 mA"),
        ("fr", "induction-hob", "100 mA"),
        ("fr", "washing-machine", "100 mA"),
        ("iec", "site-machine", "300 mA"),
        ("gb", "ev-mode-2", "100 mA"),
    ],
)
def test_a_rule_that_names_a_rating_is_judged_by_it(code: str, load: str, rated: str) -> None:
    """AS/NZS 3003 (10 mA), NF C 15-100, 60364-7-704 and 411.3.3 (30 mA): not a pass above it."""
    device = {"type": "B", "rated_residual_current": rated}
    request = {"code": code, "load": load, "device": device}
    found = [
        one
        for one in run("type-for-load", request)["findings"]
        if one["about"] == "rated residual current"
    ]

    assert {one["outcome"] for one in found} == {"cannot-say"}


def test_a_charge_point_in_china_has_30_ma_at_most() -> None:
    """GB 39752-2024, 5.3.3.1 (read)."""
    request = {"code": "cn", "load": "ev-charge-point", "dc_detection": "yes"}
    device = {"type": "A", "rated_residual_current": "300 mA"}

    assert run("type-for-load", {**request, "device": device})["outcome"] == "fail"
