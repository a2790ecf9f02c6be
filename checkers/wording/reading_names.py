"""The words that name a reading."""

from __future__ import annotations

import re

from checkers.domain.device.readings import Reading, Test, Waveform
from checkers.domain.quantities.quantity import format_number, format_quantity

SHAPES = {
    Waveform.HALF_WAVE: "half wave",
    Waveform.HALF_WAVE_90: "half wave at 90°",
    Waveform.HALF_WAVE_135: "half wave at 135°",
    Waveform.SMOOTH_DC: "smooth DC",
    Waveform.UNKNOWN: "waveform not given",
}


SPOKEN = {Test.TRIP_TIME.value: "trip time", Test.NO_TRIP.value: "no-trip test"}
SLUG = re.compile(r"(?<![\w-])(?:trip-time|no-trip)(?![\w-]| tests?\b)")


def name_of(reading: Reading) -> str:
    """Return what a reading is called: trip-time ×1 180°, ramp half wave."""
    parts = [reading.test, _level_words(reading), SHAPES.get(Waveform(reading.waveform), "")]
    if reading.test in (Test.BUTTON, Test.UNKNOWN):
        parts = [reading.test if reading.test == Test.BUTTON else "reading"]
    degrees = reading.phase + "°" if reading.phase.isdecimal() else reading.phase
    return " ".join(part for part in (*parts, degrees) if part)


def _level_words(reading: Reading) -> str:
    if reading.current is not None:
        return "at " + format_quantity(reading.current, "mA")
    return "" if reading.multiple is None else f"×{format_number(reading.multiple)}"


def spoken(about: str) -> str:
    """Return a text with each test under the name that a person has for it: trip time ×1 0°."""
    return SLUG.sub(lambda found: SPOKEN[found[0]], about)
