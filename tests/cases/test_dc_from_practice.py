"""Smooth DC through devices, as practitioners meet it: common practice, no published source.

The figures that decide are those of IEC 60364-5-53 and BS 7671, 531.3.3, notes (secondary).
"""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run

CASES = [
    (
        "a type AC above a charge point whose detection lets 6 mA pass: none is declared for AC",
        {"type": "AC", "rated_residual_current": "30 mA"},
        "6 mA",
        "fail",
    ),
    (
        "two charge points with 6 mA detection below one type A: 12 mA is twice what it bears",
        {"type": "A", "rated_residual_current": "30 mA"},
        "12 mA",
        "fail",
    ),
    (
        "the same below a type F: more than its 10 mA",
        {"type": "F", "rated_residual_current": "30 mA"},
        "12 mA",
        "fail",
    ),
    (
        "the same below a type B of 30 mA: just what it bears",
        {"type": "B", "rated_residual_current": "30 mA"},
        "12 mA",
        "pass",
    ),
    (
        "one charge point with 6 mA detection on its own type A",
        {"type": "A", "rated_residual_current": "30 mA"},
        "6 mA",
        "pass",
    ),
    (
        "a type A above a type B of 30 mA, which lets up to 60 mA pass",
        {"type": "A", "rated_residual_current": "300 mA", "delay": "S"},
        "60 mA",
        "fail",
    ),
]


@pytest.mark.parametrize(
    ("device", "dc", "outcome"), [case[1:] for case in CASES], ids=[case[0] for case in CASES]
)
def test_a_practitioner_s_judgement(device: dict[str, Any], dc: str, outcome: str) -> None:
    """The verdict is the one a careful practitioner gives."""
    reply = run("dc-bias", {"code": "gb", "on": "2026-11-24", "device": device, "dc_residual": dc})

    assert reply["outcome"] == outcome
