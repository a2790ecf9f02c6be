"""What 0 and 180 degrees mean: two starts of one test current, and a relay that uses one half."""

from __future__ import annotations

from math import pi, sin

from build_tools.drawings.scales import Scale
from build_tools.drawings.svg import Picture, Point, arrow, hatched, label, line, path

LEFT, RIGHT = 14.0, 346.0
CYCLES, HALF = 1.5, 34.0
FIRST, ROW = 84.0, 132.0
STEPS = 120


def start_phases(frequency: str = "50 Hz") -> Picture:
    """Draw a test current begun at either half wave, for a device that answers to one of them.

    Inputs: the mains frequency. The wait of the second start is half a period: arithmetic.
    """
    period = 1000.0 / float(frequency.removesuffix(" Hz"))
    across = Scale(0.0, CYCLES * period, LEFT, RIGHT)
    half = period / 2.0
    return Picture(
        key="start-phases",
        title="The same test current begun at 0° and at 180°",
        describes=f"At 0 degrees the current begins with a positive half wave, at 180 degrees with "
        f"a negative one. A relay that answers only to positive half waves has to wait "
        f"{half:g} ms longer after a start at 180 degrees.",
        height=FIRST + 2 * ROW - 66.0,
        parts=(
            _row(across, period, FIRST, 1.0, "Start at 0°: the useful half comes first"),
            _row(across, period, FIRST + ROW, -1.0, f"Start at 180°: it comes {half:g} ms later"),
        ),
        caption="Hatched: the half wave that this relay answers to. Another device may answer to "
        "the other half, or to both: so both starts are tested, and the longer time is written "
        f"down. At {frequency} half a period is {half:g} ms.",
        sources=("Half a period: 1 / (2 × frequency), calculated",),
    )


def _row(across: Scale, period: float, middle: float, sign: float, title: str) -> str:
    up = Scale(-1.0, 1.0, middle + HALF, middle - HALF)
    useful = 0.0 if sign > 0.0 else period / 2.0
    start, end = across.at(useful), across.at(useful + period / 2.0)
    parts = [
        label((LEFT, middle - HALF - 16.0), title, kind="picture__text--strong"),
        hatched((start, middle - HALF), end - start, HALF, "picture__zone--good"),
        line((LEFT, middle), (RIGHT, middle), "picture__axis"),
        path(_sine(across, up, period, sign), "picture__line"),
        line((LEFT, middle - HALF - 4.0), (LEFT, middle + HALF + 4.0), "picture__wire"),
    ]
    if sign < 0.0:
        parts += [
            arrow((LEFT + 2.0, middle + HALF + 12.0), (start - 2.0, middle + HALF + 12.0)),
            label((start + 6.0, middle + HALF + 17.0), f"{period / 2.0:g} ms"),
        ]
    return "".join(parts)


def _sine(across: Scale, up: Scale, period: float, sign: float) -> list[Point]:
    times = [CYCLES * period * step / STEPS for step in range(STEPS + 1)]
    return [(across.at(t), up.at(sign * sin(2.0 * pi * t / period))) for t in times]
