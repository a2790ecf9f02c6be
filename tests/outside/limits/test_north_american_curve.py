"""The North American time curve against its published points.

[1] The formula T = (20 / I) ^ 1.43, in three independent texts of the trade, and its points
    worked out by hand to four figures.
[2] An inspectors' magazine: no trip below 4 mA, trip at 6 mA and above.
[3] Texts of the trade that say "25 ms": the value of the formula at 264 mA, and nowhere else.
[4] UL 2231-2:2020, table 6: for pure DC (56.6 / I) ^ 4 up to 100.6 mA, then the same curve.
"""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.limits.tables import rows

DAY = date(2026, 11, 24)
PUBLISHED = {
    6.0: 5.594,
    10.0: 2.695,
    15.0: 1.509,
    20.0: 1.000,
    30.0: 0.560,
    50.0: 0.2697,
    100.0: 0.1001,
    150.0: 0.0561,
    200.0: 0.0372,
    264.0: 0.0250,
}


def greatest_time(current: float, **asked: str) -> float | None:
    """Return the greatest time [s] at a current [mA]."""
    (row,) = rows("trip-time", on=DAY, form="gfci", current=current, **asked)
    time = row.at_most(current=current)
    return None if time is None else time / 1000


@pytest.mark.parametrize(("current", "published"), PUBLISHED.items())
def test_the_curve_passes_through_the_points_of_its_table(current: float, published: float) -> None:
    """Source [1]."""
    assert greatest_time(current, waveform="ac") == pytest.approx(published, rel=0.002)


@pytest.mark.parametrize("current", [5.99, 264.1])
def test_outside_its_range_the_curve_says_nothing(current: float) -> None:
    """From 6 mA to 264 mA, both included."""
    assert greatest_time(current, waveform="ac") is None


def test_25_milliseconds_hold_at_the_upper_end_only() -> None:
    """Source [3]: at 6 mA more than five seconds are allowed."""
    below = [current for current in PUBLISHED if current < 264.0]

    assert greatest_time(263.8, waveform="ac") == pytest.approx(0.025, rel=1e-3)
    assert all((greatest_time(one, waveform="ac") or 0.0) > 0.025 for one in below)


def test_it_holds_below_4_milliamperes_and_operates_from_6() -> None:
    """Source [2]."""
    (row,) = rows("operating-current", on=DAY, form="gfci", waveform="ac")

    assert (row.at_least(), row.at_most()) == (4.0, 6.0)


def test_the_two_branches_for_pure_dc_meet() -> None:
    """Source [4]: both give 0.10 s at 100.6 mA."""
    asked = {"made_to": "ul-2231-2", "waveform": "smooth-dc"}

    assert greatest_time(100.6, **asked) == pytest.approx(0.100, abs=0.001)
    assert greatest_time(100.7, **asked) == pytest.approx(0.100, abs=0.001)
    assert greatest_time(30.0, **asked) is None
