"""The test currents that instruments drive, each drawn at the same r.m.s. value."""

from __future__ import annotations

from math import pi, sin, sqrt

from build_tools.drawings.scales import Scale
from build_tools.drawings.svg import Picture, Point, label, line, path
from checkers.domain.device.readings import Waveform

LEFT, RIGHT, WORDS_AT = 14.0, 178.0, 192.0
FIRST, ROW, HALF = 52.0, 98.0, 44.0
STEPS = 2880
DRAWN = 8  # of so many points one is drawn
CYCLES = 2.0
CUT = {
    Waveform.HALF_WAVE: 0.0,
    Waveform.HALF_WAVE_90: 90.0,
    Waveform.HALF_WAVE_135: 135.0,
}
SHOWN = (Waveform.AC, *CUT, Waveform.SMOOTH_DC)
GREATEST = 4.75  # times the r.m.s. value, which the most cut of the half waves reaches


def instrument_currents() -> Picture:
    """Draw sine, half waves cut at three angles and smooth DC, with mean and peak of each."""
    figures = {shape: _figures(_course(shape)) for shape in SHOWN}
    return Picture(
        key="instrument-currents",
        title="Test currents of the same r.m.s. value",
        describes=" ".join(
            f"{shape.label}: mean {mean:.2f}, peak {peak:.2f} times the r.m.s. value."
            for shape, (mean, peak) in figures.items()
        ),
        height=FIRST + ROW * len(SHOWN) - 46.0,
        parts=tuple(
            _row(shape, figures[shape], FIRST + ROW * place) for place, shape in enumerate(SHOWN)
        ),
        caption="Each is drawn for the same r.m.s. value. A DC-reading clamp shows the mean.",
        sources=("Mean and peak over r.m.s. of each shape: calculated here",),
    )


def _course(shape: Waveform) -> list[float]:
    """Return two periods of a shape with an r.m.s. value of 1."""
    angles = [360.0 * CYCLES * (step + 0.5) / STEPS for step in range(STEPS)]
    values = [_value(shape, angle % 360.0) for angle in angles]
    rms = sqrt(sum(value * value for value in values) / len(values))
    return [value / rms for value in values]


def _value(shape: Waveform, angle: float) -> float:
    if shape is Waveform.SMOOTH_DC:
        return 1.0
    sine = sin(pi * angle / 180.0)
    if shape is Waveform.AC:
        return sine
    return sine if CUT[shape] <= angle < 180.0 else 0.0


def _figures(course: list[float]) -> tuple[float, float]:
    return abs(sum(course)) / len(course), max(course)


def _row(shape: Waveform, figures: tuple[float, float], middle: float) -> str:
    course, (mean, peak) = _course(shape), figures
    lowest = -GREATEST / 2.0 if shape is Waveform.AC else 0.0
    up = Scale(lowest, lowest + GREATEST, middle + HALF, middle - HALF)
    width = (RIGHT - LEFT) / len(course)
    points: list[Point] = [
        (LEFT + width * (step + 0.5), up.at(value))
        for step, value in enumerate(course)
        if step % DRAWN == 0
    ]
    return "".join(
        [
            line((LEFT, up.at(0.0)), (RIGHT, up.at(0.0)), "picture__axis"),
            path(points, "picture__line"),
            label((WORDS_AT, middle - 8.0), shape.label, kind="picture__text--strong"),
            label((WORDS_AT, middle + 10.0), f"mean {mean:.2f} × r.m.s."),
            label((WORDS_AT, middle + 27.0), f"peak {peak:.2f} × r.m.s."),
        ]
    )
