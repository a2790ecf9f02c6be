"""The sentence on smooth DC says what limits it, and only where something does."""

from __future__ import annotations

from typing import Any

from checkers import run

OPENS = "a device that senses it opens there"
TOGETHER = "no more comes together"
POINT = {"load": "ev-charge-point", "dc_protection": "rdc-dd"}


def said(devices: list[dict[str, Any]], loads: list[dict[str, Any]]) -> list[str]:
    """Return what is said of each device."""
    rated = [{"type": "A", "rated_residual_current": "30 mA", **one} for one in devices]
    found = run("series", {"devices": rated, "loads": loads})["findings"]
    return [one["says"] for one in found if one["judges"] == "fitness-for-dc"]


def test_a_plain_sum_is_not_said_to_be_limited() -> None:
    """One source, and two: nothing opens before all of it flows."""
    for loads in ([{"below": "a", **POINT}], [{"below": "a", **POINT, "count": 2}]):
        (says,) = said([{"id": "a"}], loads)
        assert OPENS not in says
        assert TOGETHER not in says


def test_what_is_limited_is_said_to_be() -> None:
    """A type B opens at twice its rating, though the drive on it could give more."""
    (says,) = said([{"id": "a", "type": "B"}], [{"below": "a", "load": "three-phase-drive"}])

    assert "Up to 60 mA" in says
    assert OPENS in says


def test_what_the_paths_below_share_is_not_said_to_open_anything() -> None:
    """Two detections in parallel before one charge point of 6 mA: no more than that comes."""
    detectors = [{"id": name, "below": "t", "form": "rdc-dd"} for name in ("p", "q")]
    devices = [{"id": "t"}, *detectors, {"id": "a", "below": "p,q"}]
    says, *_ = said(devices, [{"below": "a", **POINT}])

    assert TOGETHER in says
    assert OPENS not in says
