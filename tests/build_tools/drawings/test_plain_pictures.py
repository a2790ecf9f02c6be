"""Pictures that rest on arithmetic and on what is printed on a device."""

from __future__ import annotations

import pytest

from build_tools.drawings.circuits.button_current import button_current
from build_tools.drawings.circuits.clamp_places import clamp_places
from build_tools.drawings.circuits.neutral_to_earth import neutral_to_earth
from build_tools.drawings.currents.instrument_currents import instrument_currents
from build_tools.drawings.currents.leakage_sum import leakage_sum
from build_tools.drawings.currents.start_phases import start_phases
from build_tools.drawings.type_symbols import SIGNS, delay_marks, type_symbols


@pytest.mark.parametrize(("frequency", "wait"), [("50 Hz", "10 ms"), ("60 Hz", "8.33333 ms")])
def test_the_second_start_waits_half_a_period(frequency: str, wait: str) -> None:
    """1 / (2 × frequency)."""
    assert wait in start_phases(frequency).describes


@pytest.mark.parametrize(
    ("name", "mean", "peak"),
    [
        # Average over r.m.s. and crest factor of cut half waves: textbooks on rectifiers, and
        # 0.637, 0.450, 0.309 by integration.
        ("Half wave, 0°", "0.64", "2.00"),
        ("Half wave cut at 90°", "0.45", "2.83"),
        ("Half wave cut at 135°", "0.31", "4.6"),
        ("AC (sine)", "0.00", "1.41"),
        ("Smooth DC", "1.00", "1.00"),
    ],
)
def test_mean_and_peak_of_the_test_currents(name: str, mean: str, peak: str) -> None:
    """A DC-reading clamp shows the mean of what the instrument drives."""
    assert f"{name}: mean {mean}, peak {peak}" in instrument_currents().describes


def test_leakage_adds_as_the_sides_of_a_triangle() -> None:
    """25 mA and 10 mA at right angles make 26.9 mA, by Pythagoras."""
    assert "26.9 mA" in leakage_sum().svg
    assert "not 35 mA" in leakage_sum().describes


def test_a_wider_type_has_every_sign_of_the_narrower_but_the_plain_sine() -> None:
    """Symbols build on one another, as the device standards have them (from memory)."""
    assert SIGNS["A"] == ("sine-and-pulses",)
    assert set(SIGNS["A"]) < set(SIGNS["F"]) < set(SIGNS["B"])
    assert "smooth" not in SIGNS["F"]


def test_one_type_can_be_shown_alone() -> None:
    """Its page shows its own symbol, under its own name."""
    assert type_symbols(["F"]).title == "Symbol of type F"
    assert "AC:" not in type_symbols(["F"]).svg


def test_marks_beside_the_symbol() -> None:
    """S, G, the snowflake and the button."""
    words = delay_marks().describes

    assert all(mark in words for mark in ("S: selective", "G: short delay", "snowflake", "T: "))


def test_the_button_has_no_earth_in_its_way() -> None:
    """Its picture says so, and how much it may drive."""
    assert "No earth" in button_current().describes
    assert "2.5" in button_current().svg


def test_places_to_clamp_are_told_apart() -> None:
    """All live conductors, the protective conductor, one live conductor."""
    assert all(f"Place {one}:" in clamp_places().describes for one in (1, 2, 3))


def test_a_link_below_the_device_takes_a_share() -> None:
    """One share is not seen, the other is."""
    drawn = neutral_to_earth().svg

    assert ">not seen<" in drawn
    assert ">seen<" in drawn
