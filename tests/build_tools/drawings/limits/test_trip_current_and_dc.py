"""The curve of trip current against DC goes with the bench, and says what it is."""

from __future__ import annotations

import re

from build_tools.drawings.limits.trip_current_and_dc import trip_current_and_dc


def test_both_bench_points_are_drawn_in() -> None:
    """70 mA with 50 mA of DC and 210 mA with 250 mA of DC (common practice, no source)."""
    drawn = trip_current_and_dc("AC", own="27 mA")

    assert "70 mA with 50 mA" in drawn.svg
    assert "210 mA with 250 mA" in drawn.svg
    assert len(re.findall("<circle", drawn.svg)) == 2


def test_what_is_declared_is_not_drawn_as_measured() -> None:
    """The 6 mA of type A is a bar with an arrow, with words that say what it is."""
    drawn = trip_current_and_dc("A")

    assert "<circle" not in drawn.svg
    assert "at most 30 mA with 6 mA" in drawn.svg
    assert "declared and not measured" in drawn.caption


def test_the_curve_passes_near_them() -> None:
    """Within 15 % of 210 mA at 250 mA of DC, read off the drawing itself."""
    drawn = trip_current_and_dc("AC", own="27 mA").svg
    curve = re.search(r'<path d="M[^"]*L346 ([\d.]+)" class="picture__line"/>', drawn)
    point = re.search(r'<circle cx="346" cy="([\d.]+)"', drawn)
    assert curve is not None
    assert point is not None
    floor = 226.0

    assert abs((floor - float(curve[1])) / (floor - float(point[1])) - 1.0) < 0.15


def test_the_rating_and_the_button_are_drawn_in() -> None:
    """A button may drive 2.5 times the rating (IEC 61008-1, from memory)."""
    drawn = trip_current_and_dc("AC", own="27 mA").svg

    assert "rating: 30 mA" in drawn
    assert "most a test button drives: 75 mA" in drawn


def test_a_type_that_senses_dc_ends_where_the_dc_opens_it() -> None:
    """A 30 mA type B must have opened at 60 mA of smooth DC (twice its rating, makers' tables)."""
    assert "60 mA of DC opens it" in trip_current_and_dc("B", reach="80 mA").svg


def test_the_caption_calls_the_band_a_judgement() -> None:
    """It is no confidence interval, and no published table stands behind the line."""
    assert "no confidence interval" in trip_current_and_dc().caption
