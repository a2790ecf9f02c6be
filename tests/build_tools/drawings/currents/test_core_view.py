"""The core is drawn as the model moves it, and the word beside it is what the model says."""

from __future__ import annotations

import pytest

from build_tools.drawings.currents.core_view import core_view

SINE = {"title": "Sine, 30 mA", "alternating": "30 mA"}
HALF_WAVES = {"title": "Half waves, 42 mA", "alternating": "42 mA", "shape": "half-wave"}
SMOOTH = {"title": "Smooth DC, 50 mA", "smooth": "50 mA"}
ON_SMOOTH = {"title": "Sine on 50 mA", "alternating": "30 mA", "smooth": "50 mA"}
BENCH = {"title": "Sine, 80 mA, on 50 mA", "alternating": "80 mA", "smooth": "50 mA"}


@pytest.mark.parametrize(
    ("type_", "case", "does"),
    [
        ("AC", SINE, "opens"),  # at the rating (IEC 61008-1)
        ("AC", SMOOTH, "holds"),  # a core answers to change
        ("AC", ON_SMOOTH, "holds"),  # bench: 70 mA needed with 50 mA of DC (common practice)
        ("AC", BENCH, "opens"),  # the same bench point, 15 % above it
        ("A", HALF_WAVES, "opens"),  # 1.4 times the rating (IEC 61008-1, table 20)
        ("A", {**SINE, "smooth": "6 mA"}, "opens"),  # what a type A is declared to bear
    ],
)
def test_the_relay_does_what_is_known_of_the_type(
    type_: str, case: dict[str, str], does: str
) -> None:
    """Standards and the bench say which currents open which type."""
    assert f"device {does}." in core_view([case], type_).describes


def test_smooth_dc_moves_no_flux() -> None:
    """The flux stands still at one value."""
    words = core_view([SMOOTH]).describes
    low, high = words.split("between ")[1].split(" of saturation")[0].split(" and ")

    assert low == high
