"""The drawn fault currents are those of textbooks."""

from __future__ import annotations

import re
from math import pi, sqrt

import pytest

from build_tools.drawings.currents.waveform import low_stretches, waveform

PEAK = 230.0 * sqrt(2.0)  # mA through 1 kohm


def average(words: str) -> float:
    """Return the average that a description names [mA]."""
    found = re.search(r"average (-?\d+) mA", words)
    assert found is not None
    return float(found[1])


@pytest.mark.parametrize(
    ("circuit", "share"),
    [("half-wave", 1.0 / pi), ("bridge", 1.0 / pi), ("three-pulse", 0.827)],
)
def test_the_average_named_is_that_of_the_shape(circuit: str, share: float) -> None:
    """Half wave 1/π of the peak, three pulses 0.827 (textbooks on rectifiers), less the valves."""
    assert average(waveform(circuit).describes) == pytest.approx(share * PEAK, rel=0.01)


def test_a_long_pause_is_hatched_and_a_short_one_is_not() -> None:
    """A half wave rests for half a period; three pulses never do."""
    assert "picture__hatch" in waveform("half-wave").svg
    assert "180" in waveform("half-wave").describes or "182" in waveform("half-wave").describes
    assert "picture__hatch" not in waveform("three-pulse").svg


def test_stretches_at_or_under_a_bound() -> None:
    """A straight rise and fall through the bound is cut where it crosses it."""
    points = [(0.0, 0.0), (2.0, 0.0), (4.0, 20.0), (6.0, 0.0), (8.0, -20.0)]

    found = list(low_stretches(points, 10.0))

    assert [pytest.approx(one) for one in found] == [(0.0, 3.0), (5.0, 7.0)]


def test_a_composite_current_is_drawn_over_one_mains_cycle() -> None:
    """Five of them would blur into a block; the caption says what is left out."""
    drawn = waveform("single-phase-inverter")

    assert "one mains cycle" in drawn.caption
    assert ">20<" in drawn.svg
