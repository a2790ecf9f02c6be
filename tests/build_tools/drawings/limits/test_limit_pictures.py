"""Limits are drawn as the published tables have them."""

from __future__ import annotations

import pytest

from build_tools.drawings.limits.operating_bands import operating_bands
from build_tools.drawings.limits.time_limits import limits_of, time_limits


@pytest.mark.parametrize(
    ("rated", "delay", "points"),
    [
        # IEC 61008-1 table 1, as makers of RCCBs reprint it.
        ("30 mA", "none", [(30.0, None, 300.0), (60.0, None, 150.0), (150.0, None, 40.0)]),
        ("100 mA", "S", [(100.0, 130.0, 500.0), (200.0, 60.0, 200.0), (500.0, 50.0, 150.0)]),
    ],
)
def test_the_points_are_those_of_the_table(
    rated: str, delay: str, points: list[tuple[float, float | None, float]]
) -> None:
    """Current, least and greatest time."""
    found = limits_of("A", rated, "ac", delay, "rccb")

    assert points == [(one.current, one.least, one.most) for one in found]


def test_a_delayed_device_has_a_zone_in_which_it_is_too_quick() -> None:
    """One without delay has none."""
    assert "too quick" in time_limits(rated="100 mA", delay="S").svg
    assert "too quick" not in time_limits().svg


def test_the_north_american_curve_is_drawn_from_its_formula() -> None:
    """(20 / I) ^ 1.43 s: 5.594 s at 6 mA and 25 ms at 264 mA (three texts agree)."""
    drawn = time_limits(form="gfci", rated="6 mA")

    assert "5.594 s at 6 mA" in drawn.describes
    assert "25 ms at 264 mA" in drawn.describes


def test_6_ma_detection_has_absolute_currents() -> None:
    """IEC 62955:2018 table 2: 10 s at 6 mA, 0.3 s at 60 mA, 0.1 s at 200 mA."""
    found = limits_of("A", "6 mA", "smooth-dc", "none", "rdc-dd")

    assert [(one.current, one.most) for one in found] == [
        (6.0, 10_000.0),
        (60.0, 300.0),
        (200.0, 100.0),
    ]


def test_a_device_without_times_is_refused() -> None:
    """A type AC has no limits on half waves: a picture of none would say that it has."""
    with pytest.raises(ValueError, match="no time limits"):
        time_limits(type="AC", waveform="half-wave")


def test_bands_of_a_type_b() -> None:
    """AC 0.5 to 1, half waves 0.35 to 1.4, smooth DC 0.5 to 2 ratings (makers' tables)."""
    words = operating_bands("B").describes

    assert "AC (sine): 15 mA to 30 mA." in words
    assert "Half wave, 0°: 10.5 mA to 42 mA." in words
    assert "Smooth DC: 15 mA to 60 mA." in words


def test_bands_far_above_the_others_are_left_to_the_table() -> None:
    """At 1 kHz a type B may need 14 times its rating: that would press all others flat."""
    assert "1 kHz" not in operating_bands("B").svg
