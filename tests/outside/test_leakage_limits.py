"""Leakage budgets and sums agree with published figures."""

from __future__ import annotations

from math import hypot
from typing import Any

import pytest

from checkers import run


def ask(**request: Any) -> dict[str, Any]:
    """Return the answer of the leakage checker for a 30 mA device under the British rules."""
    device = {"rated_residual_current": "30 mA"}
    reply = run("leakage-budget", {"code": "gb", "on": "2026-11-24", "device": device, **request})
    assert reply["kind"] == "result", reply
    return dict(reply["answer"])


# BS 7671:2018, 531.3.2 (iii), and DIN VDE 0100-530:2018-06, 531.3.2: 30 % of the rating; a trade
# journal works it out as 9 mA for 30 mA. DIN VDE 0100-530:2011 had 40 %. A contractors' fact
# sheet of about 2008 had 25 %.
@pytest.mark.parametrize(
    ("code", "on", "printed"),
    [("gb", "2026-11-24", 9), ("de", "2026-11-24", 9), ("de", "2017-01-01", 12)],
)
def test_the_budget_is_the_share_that_held_on_the_day(code: str, on: str, printed: float) -> None:
    """0.3 of the rating today, 0.4 in Germany before June 2018."""
    assert printed == ask(code=code, on=on)["budget"]["value"]
    assert ask(code=code, on=on)["older_margin"]["value"] == 7.5


def test_the_no_trip_limit_is_half_the_rating() -> None:
    """IEC 61008-1, rated non-operating current: 0.5 of the rating."""
    assert ask()["no_trip_limit"]["value"] == 15


# IEC 60335-1, 13.2 (as quoted): 0.75 mA for portable, 3.5 mA for stationary motor-operated
# appliances of class I; 9 / 0.75 = 12 and 9 / 3.5 = 2.57.
@pytest.mark.parametrize(("leakage", "count"), [("0.75 mA", 12), ("3.5 mA", 2)])
def test_so_many_items_fit_into_nine_milliamperes(leakage: str, count: int) -> None:
    """The last one that just fits is counted, a part of one is not."""
    assert count == ask(items=[{"leakage": leakage}])["fit"][0]["fit_alone"]
    assert count - 1 == ask(items=[{"leakage": leakage}])["fit"][0]["more_fit"]


def test_capacitive_and_resistive_leakage_add_at_right_angles() -> None:
    """Derived: 10 mA capacitive and 25 mA resistive make 26.9 mA, not 35."""
    items = [
        {"leakage": "10 mA", "nature": "capacitive"},
        {"leakage": "25 mA", "nature": "resistive"},
    ]

    assert hypot(10, 25) == pytest.approx(ask(items=items)["expected"]["value"], abs=0.001)
    unknown = [{"leakage": "10 mA"}, {"leakage": "25 mA"}]
    assert ask(items=unknown)["expected"]["value"] == 35


@pytest.mark.parametrize("ohms", [37_000, 100_000, 1_000_000])
def test_insulation_lets_a_resistive_current_through(ohms: int) -> None:
    """Ohm's law at 230 V, the line voltage of IEC 60038."""
    found = ask(insulation_resistance=f"{ohms} ohm")["expected"]["value"]

    assert 230_000 / ohms == pytest.approx(found, rel=1e-3)
