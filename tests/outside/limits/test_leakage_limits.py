"""Leakage budgets and sums agree with published figures."""

from __future__ import annotations

from cmath import rect
from itertools import product
from math import hypot, radians
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
    """Derived: 10 mA capacitive and 25 mA resistive on one line make 26.9 mA, not 35."""
    items = [
        {"leakage": "10 mA", "nature": "capacitive", "line": "L1"},
        {"leakage": "25 mA", "nature": "resistive", "line": "L1"},
    ]

    assert hypot(10, 25) == pytest.approx(ask(items=items)["expected"]["value"], abs=0.001)
    unknown = [{"leakage": "10 mA"}, {"leakage": "25 mA"}]
    assert ask(items=unknown)["expected"]["value"] == 35


@pytest.mark.parametrize("ohms", [37_000, 100_000, 1_000_000])
def test_insulation_lets_a_resistive_current_through(ohms: int) -> None:
    """Ohm's law at 230 V, the line voltage of IEC 60038."""
    found = ask(insulation_resistance=f"{ohms} ohm")["expected"]["value"]

    assert 230_000 / ohms == pytest.approx(found, rel=1e-3)


def test_on_another_line_capacitive_leakage_all_but_adds_to_resistive() -> None:
    """Capacitive on L1 leads by 90°, L3 stands at 120°: 30° apart, and the line is not told."""
    items = [
        {"leakage": "10 mA", "nature": "capacitive"},
        {"leakage": "25 mA", "nature": "resistive"},
    ]
    together = abs(rect(10, radians(90)) + rect(25, radians(120)))

    assert together == pytest.approx(ask(items=items)["expected"]["value"], abs=0.01)


ANGLES = {"L1": 0.0, "L2": -120.0, "L3": 120.0}


def states(on_lines: dict[str, float]) -> list[float]:
    """Return the sums [mA] of capacitive currents on three lines, for each set of lines alive."""
    sums = []
    for alive in product((True, False), repeat=3):
        there = zip(on_lines.items(), alive, strict=True)
        sums.append(
            abs(sum(rect(one, radians(ANGLES[line])) for (line, one), is_on in there if is_on))
        )
    return sums


# Worked by hand from the angles of a three-phase supply, lines a third of a period apart.
@pytest.mark.parametrize(
    ("counts", "worst", "together"),
    [((3, 3, 3), 6.0, 0.0), ((5, 4, 3), 10.0, 12**0.5), ((9, 0, 0), 18.0, 18.0)],
)
def test_nine_items_of_2_mA_over_three_lines(  # noqa: N802  # the unit is written so
    counts: tuple[int, int, int], worst: float, together: float
) -> None:
    """Three on each line: 0 mA with everything on, and 6 mA as soon as one line is left alone."""
    on_lines = {line: 2.0 * count for line, count in zip(ANGLES, counts, strict=True)}
    items = [
        {"leakage": "2 mA", "count": count, "nature": "capacitive", "line": line}
        for line, count in zip(ANGLES, counts, strict=True)
        if count
    ]
    answer = ask(items=items)

    assert worst == pytest.approx(max(states(on_lines)))
    assert worst == pytest.approx(answer["expected"]["value"], abs=0.001)
    assert together == pytest.approx(states(on_lines)[0], abs=1e-9)
    if "with_everything_on" in answer:
        assert together == pytest.approx(answer["with_everything_on"]["value"], abs=0.001)
