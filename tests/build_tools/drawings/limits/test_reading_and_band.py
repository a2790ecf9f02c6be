"""Readings are drawn where they lie, with the verdict that the checker gives."""

from __future__ import annotations

import re

import pytest

from build_tools.drawings.limits.reading_and_band import reading_and_band

RAMP: dict[str, str | float] = {"test": "ramp", "waveform": "ac"}
TIME: dict[str, str | float] = {"test": "trip-time", "waveform": "ac", "multiple": 1.0}


@pytest.mark.parametrize(
    ("value", "word"),
    [("22 mA", "pass"), ("31 mA", "borderline"), ("9 mA", "fail"), ("60 mA", "fail")],
)
def test_the_word_beside_a_reading_is_the_verdict(value: str, word: str) -> None:
    """15 to 30 mA for a 30 mA device on AC (IEC 61008-1, as quoted), 10 % uncertainty."""
    assert f"{value}: {word}" in reading_and_band([value], {"type": "A"}, RAMP).describes


def test_a_reading_lies_between_its_limits() -> None:
    """22 mA is drawn right of the mark for 15 mA and left of that for 30 mA."""
    drawn = reading_and_band(["22 mA"], {"type": "A"}, RAMP).svg
    marks = {words: float(x) for x, words in re.findall(r'<text x="([\d.]+)"[^>]*>(\d+)<', drawn)}
    dot = re.search(r'<circle cx="([\d.]+)"', drawn)

    assert dot is not None
    assert marks["15"] < float(dot[1]) < marks["30"]


def test_a_bound_reaches_to_the_end() -> None:
    """More than 300 ms has no greatest value: its bar goes on."""
    drawn = reading_and_band([">300 ms"], {"type": "A"}, TIME).svg

    assert "&gt; 300 ms: fail" in drawn
    assert re.search(r'L346 [\d.]+" class="picture__whisker"', drawn)
