"""The drawing of an arrangement on a page shows what the checker says of it."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest

from build_tools.drawings.circuits.arrangement import arrangement
from build_tools.drawings.svg import WIDTH

DEVICES = [
    {"id": "main", "type": "A", "rated_residual_current": "300 mA", "delay": "S"},
    {"id": "drive & saw", "below": "main", "type": "B", "rated_residual_current": "30 mA"},
]
LOADS = [{"below": "drive & saw", "load": "three-phase-drive"}]


def test_it_shows_the_verdict_and_the_dc_of_each_device() -> None:
    """In words in the drawing, and the same in its description."""
    picture = arrangement("one", "A type B below a type A", DEVICES, LOADS)

    assert "Fail: DC up to 60 mA, bears 6 mA" in picture.svg
    assert "Pass: DC up to 60 mA, opens at 60 mA" in picture.describes
    assert 'class="tree__sign tree__sign--fail"' in picture.svg
    assert picture.sources


def test_it_is_whole_and_lies_inside_its_frame() -> None:
    """Names are escaped, and nothing is drawn above, below or beside the picture."""
    picture = arrangement("one", "A type B below a type A", DEVICES, LOADS)
    root = ET.fromstring(picture.svg)  # noqa: S314  # our own drawing
    heights = [float(one.attrib["y"]) for one in root.iter("text")]
    points = re.findall(r"[ML]([\d.]+) ([\d.]+)", picture.svg)

    assert "drive &amp; saw" in picture.svg
    assert max(heights) <= picture.height
    assert all(float(x) <= WIDTH and float(y) <= picture.height for x, y in points)


def test_an_arrangement_that_the_checker_refuses_stops_the_build() -> None:
    """A page never shows a drawing of what cannot be."""
    with pytest.raises(ValueError, match="refuses"):
        arrangement("one", "A loop", [{**DEVICES[0], "below": "main"}], [])
