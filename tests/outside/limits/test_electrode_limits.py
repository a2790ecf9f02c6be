"""Greatest resistances and disconnection times agree with published figures."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from checkers import run

PAGES = Path(__file__).parents[3] / "docs"
QUOTIENT = re.compile(r"(\d+) V / (\d+) mA = (\d+) ohm(?:, and for (\d+) mA it is (\d+) ohm)?")
PRODUCT = re.compile(r"(\d+) mA over (\d+) ohm are (\d+) V")


def ask(**request: Any) -> dict[str, Any]:
    """Return the answer of the electrode checker under the British rules."""
    reply = run("earth-electrode", {"code": "gb", "on": "2026-11-24", **request})
    assert reply["kind"] == "result", reply
    return dict(reply["answer"])


# BS 7671, table 41.5 (greatest loop impedance with an RCD), as a trade article prints it for
# 30 mA: 1667 ohm; the other rows by IEC 60364-4-41, 411.5.3: 50 V divided by the rating.
@pytest.mark.parametrize(
    ("rated", "printed"),
    [("10 mA", 5000), ("30 mA", 1667), ("100 mA", 500), ("300 mA", 167), ("500 mA", 100)],
)
def test_the_greatest_resistance_is_the_printed_one_rounded_down(rated: str, printed: int) -> None:
    """The tables round to the nearest ohm; here nothing is rounded up."""
    found = ask(device={"rated_residual_current": rated})["greatest_resistance"]

    assert found["value"] <= printed
    assert printed == pytest.approx(found["value"], abs=1)


# The same rule at 25 V: half of each row.
@pytest.mark.parametrize(("rated", "derived"), [("30 mA", 833), ("100 mA", 250), ("300 mA", 83)])
def test_special_places_have_half_of_it(rated: str, derived: int) -> None:
    """25 V divided by the rating."""
    found = ask(device={"rated_residual_current": rated}, touch_voltage_limit="25 V")

    assert derived == found["greatest_resistance"]["value"]
    assert derived == found["greatest_resistance_at_25_v"]["value"]


def test_the_rule_read_backwards_gives_the_worked_example() -> None:
    """A published worked example: 200 ohm allow 250 mA at most, so 250 mA make just 50 V."""
    found = ask(electrode_resistance="200 ohm", device={"rated_residual_current": "250 mA"})

    assert found["touch_voltage"]["value"] == 50


def test_a_type_b_device_at_the_ac_limit_stays_under_120_v_of_dc() -> None:
    """Derived: 2 × 30 mA of smooth DC over 1667 ohm make 100 V, under the 120 V for DC."""
    b = {"type": "B", "rated_residual_current": "30 mA"}
    found = ask(electrode_resistance="1667 ohm", device=b)

    assert found["dc_touch_voltage"]["value"] == pytest.approx(100.02, abs=0.1)
    assert found["dc_touch_voltage"]["value"] < found["dc_touch_voltage_limit"]["value"] == 120


# A printed primer on RCD selection: at the limit of 50 V a TT fault at 230 V gives
# 230/50 = 4.6 times the rating, so 0.15 s for the general type and 0.2 s for type S.
@pytest.mark.parametrize(("delay", "time"), [("none", 150), ("S", 200)])
def test_a_tt_fault_at_the_limit_gives_4_6_times_the_rating(delay: str, time: float) -> None:
    """Both meet the 0.2 s of IEC 60364-4-41, table 41.1."""
    device = {"rated_residual_current": "100 mA", "delay": delay}
    found = ask(electrode_resistance="500 ohm", device=device)

    assert found["multiple"]["value"] == 4.6
    assert time == found["greatest_trip_time"]["value"]
    assert found["disconnection_time"]["value"] == 200


# The same primer: far above five times the rating, 0.04 s for the general type and 0.15 s
# for type S; the limit in TN is 0.4 s.
@pytest.mark.parametrize(("delay", "time"), [("none", 40), ("S", 150)])
def test_a_tn_fault_is_far_above_five_times_the_rating(delay: str, time: float) -> None:
    """A loop of one ohm."""
    device = {"rated_residual_current": "100 mA", "delay": delay}
    found = ask(electrode_resistance="1 ohm", system="tn", device=device)

    assert time == found["greatest_trip_time"]["value"]
    assert found["disconnection_time"]["value"] == 400


def worked(volts: str, milliamperes: str) -> int:
    """Return a touch voltage over a rating to the nearest ohm (IEC 60364-4-41, 411.5.3)."""
    return round(Fraction(volts) * 1000 / Fraction(milliamperes))


def test_every_quotient_on_a_page_is_the_worked_sum() -> None:
    """RA × IΔn ≤ 50 V (IEC 60364-4-41, 411.5.3): 1666.67 ohm for 30 mA, printed as 1667."""
    found = [
        (name.name, *one.groups())
        for name in PAGES.rglob("*.md")
        for one in QUOTIENT.finditer(" ".join(name.read_text("utf-8").split()))
    ]

    assert {"is-200-ohm-good-enough.md"} <= {name for name, *_ in found}
    for _, volts, rated, ohms, other, other_ohms in found:
        assert int(ohms) == worked(volts, rated)
        assert other is None or int(other_ohms) == worked(volts, other)


def test_every_product_on_a_page_is_the_worked_sum() -> None:
    """Twice 30 mA over the greatest resistance: 100 V, and the resistance as it is printed."""
    text = " ".join((PAGES / "electrodes.md").read_text("utf-8").split())
    found = PRODUCT.findall(text)

    assert found != []
    for current, ohms, volts in found:
        assert int(ohms) == worked("50", str(int(current) // 2))
        assert int(volts) == round(Fraction(current) * Fraction(ohms) / 1000)


@pytest.mark.parametrize("limit", [50, 25])
@pytest.mark.parametrize("rated", [10, 30, 100, 300, 500])
@pytest.mark.parametrize("step", ["0.5", "0.01", "0.0001"])
def test_nothing_over_the_exact_quotient_passes(rated: int, limit: int, step: str) -> None:
    """However exact the instrument: 1667 ohm makes 50.01 V with 30 mA (411.5.3)."""
    exact = Fraction(limit * 1000, rated)
    over = exact + Fraction(step)
    asked = {
        "code": "gb",
        "on": "2026-11-24",
        "device": {"type": "A", "rated_residual_current": f"{rated} mA"},
        "electrode_resistance": f"{float(over):.6f} ohm",
        "touch_voltage_limit": f"{limit} V",
    }

    for uncertainty in ({}, {"resistance_uncertainty": "0.001 ohm"}):
        reply = run("earth-electrode", asked | uncertainty)
        assert reply["kind"] == "result", reply
        assert reply["outcome"] in {"fail", "borderline"}


def test_the_printed_figure_for_30_ma_is_no_pass() -> None:
    """1667 ohm is over 1666.67 ohm; 1666 ohm, known exactly, is under it."""
    exact = {"resistance_uncertainty": "0.1 ohm", "device": {"rated_residual_current": "30 mA"}}
    outcomes = {}
    for ohms in ("1666 ohm", "1667 ohm"):
        reply = run("earth-electrode", {"code": "gb", "electrode_resistance": ohms, **exact})
        found = {one["about"]: one["outcome"] for one in reply["findings"]}
        outcomes[ohms] = found["touch voltage"]

    assert outcomes == {"1666 ohm": "pass", "1667 ohm": "fail"}
