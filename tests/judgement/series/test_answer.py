"""The figures of an answer: a number, the fault loop, or not known, and nothing else."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run


@pytest.mark.parametrize(
    ("device", "load", "expected"),
    [
        ({"type": "A"}, "ev-charge-point", "limited only by the fault loop"),
        ({"type": "A"}, "switched-mode-supply", {"value": 6.0, "unit": "mA"}),
        ({"type": "unknown"}, "switched-mode-supply", {"value": 6.0, "unit": "mA"}),
        ({"type": "A"}, None, "not known"),
        ({"type": "B", "rated_residual_current": None}, "ev-charge-point", "not known"),
    ],
)
def test_the_greatest_dc_is_a_figure_only_where_it_is_one(
    device: dict[str, Any], load: str | None, expected: object
) -> None:
    """Without equipment, or without the rating of a type B, nothing is made up."""
    devices = [{"id": "a", "rated_residual_current": "30 mA", **device}]
    loads = [{"below": "a", "load": load}] if load else []
    (row,) = run("series", {"devices": devices, "loads": loads})["answer"]["devices"]

    assert row["greatest_unseen_dc"] == expected
