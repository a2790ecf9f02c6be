"""SVG is written from plain values, and what is written is safe to put into a page."""

from __future__ import annotations

import pytest

from build_tools.drawings.svg import Picture, arrow, element, hatched, label, number


@pytest.mark.parametrize(
    ("value", "written"), [(0.0, "0"), (-0.01, "0"), (12.0, "12"), (3.14159, "3.1"), (-2.5, "-2.5")]
)
def test_a_coordinate_is_short(value: float, written: str) -> None:
    """A tenth of a unit is enough, and there is no minus zero."""
    assert written == number(value)


def test_words_are_escaped() -> None:
    """A sign of less or a quotation mark in a text or a title stays a sign."""
    assert "&lt; 6 mA" in label((0.0, 0.0), "< 6 mA")
    assert 'id="a&quot;b"' in element("g", id='a"b')
    assert "a &amp; b" in Picture("key", "a & b", "words", 10.0, ()).svg


def test_an_arrow_ends_where_it_points() -> None:
    """The head's tip is the end of the way."""
    assert "M50 20" in arrow((10.0, 20.0), (50.0, 20.0))


def test_hatching_stays_inside_its_area() -> None:
    """Every slanting line begins and ends on the area's edge."""
    drawn = hatched((10.0, 20.0), 30.0, 40.0, "picture__zone")

    for stroke in drawn.split('<path d="M')[1:]:
        start, end = stroke.split('"')[0].split("L")
        for point in (start, end):
            x, y = (float(one) for one in point.split())
            assert 10.0 <= x <= 40.0
            assert 20.0 <= y <= 60.0
