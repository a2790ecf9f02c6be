"""What is worked out beside the findings on a leakage.

The budget of 30 % of the rating is BS 7671:2018, 531.3.2 (number from memory): 9 mA at 30 mA.
"""

from __future__ import annotations

from typing import Any

from checkers import run

DEVICE = {"type": "A", "rated_residual_current": "30 mA", "form": "rcbo"}


def _answer(**more: Any) -> dict[str, Any]:
    reply = run("leakage-budget", {"code": "gb", "on": "2026-11-24", "device": DEVICE, **more})
    return dict(reply["answer"])


def test_a_measurement_is_a_share_of_the_budget() -> None:
    """By hand: 4.5 mA of 9 mA is a half, and 4.5 mA are left."""
    answer = _answer(measured="4.5 mA")

    assert answer["budget"]["value"] == 9.0
    assert answer["used_fraction"]["value"] == 0.5
    assert answer["left"]["value"] == 4.5


def test_without_anything_listed_or_measured_no_figure_is_made_up() -> None:
    """Only the limits stand there, which the device and the code tell."""
    assert not {"expected", "left", "used_fraction", "fit"} & _answer().keys()


def test_what_leaks_on_one_line_adds_up() -> None:
    """By hand: 2 × 2 mA on a single-phase device make 4 mA, and of the 5 mA left fit two more."""
    item = {"load": "other", "count": 2, "leakage": "2 mA", "label": "Pump"}
    answer = _answer(items=[item], supply="single-phase")

    assert answer["expected"]["value"] == 4.0
    assert answer["left"]["value"] == 5.0
    assert [one["more_fit"] for one in answer["fit"]] == [2]
