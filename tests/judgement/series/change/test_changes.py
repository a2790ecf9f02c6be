"""A device of its own is of the least type that suits the load and bears what it leaves."""

from __future__ import annotations

from typing import Any

import pytest

from checkers.judgement.series.change.changes import GiveOwnDevice
from tests.judgement.series.trees import arranged


@pytest.mark.parametrize(
    ("load", "expected"),
    [
        ({"load": "switched-mode-supply"}, "type A"),
        ({"load": "single-phase-drive"}, "type F"),  # a type A bears it, and does not suit it
        ({"load": "led-lighting", "dc_residual": "8 mA"}, "type F"),  # it suits, and bears 6 mA
        ({"load": "led-lighting", "dc_residual": "20 mA"}, "type B"),
        ({"load": "three-phase-drive"}, "type B"),
    ],
)
def test_the_type_of_an_own_device_suits_and_bears(load: dict[str, Any], expected: str) -> None:
    """BS 7671:2018+A2:2022, 531.3.3: type A bears 6 mA, type F 10 mA."""
    device = {"id": "a", "type": "A", "rated_residual_current": "30 mA"}
    heater = {"below": "a", "load": "resistive"}
    arrangement = arranged({"devices": [device], "loads": [{"below": "a", **load}, heater]})

    assert f"a device of its own, {expected}," in GiveOwnDevice(0).words(arrangement)
