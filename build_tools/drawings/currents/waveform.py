"""The current of an earth fault in a converter circuit, as the fault-waveform checker gives it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil
from typing import Any

import checkers
from build_tools.drawings.answers import amount, answer_of
from build_tools.drawings.scales import Scale, figure, grid
from build_tools.drawings.svg import Picture, Point, hatched, label, line, path
from checkers.physics.converter.circuits import BOOK, BOUNDS, CIRCUITS, PLACES
from checkers.physics.converter.waveform_class import WaveformClass

ACROSS = (52.0, 350.0)
UP = (190.0, 26.0)
ROOM = 1.08  # above the peak and below the trough
SOURCES = (
    "Calculated here from the circuit; the model is described in the decision on fault waveforms",
    *(BOOK.sources[key].words for key in ("classes", "types")),
)
MAINS_CYCLE = 20.0  # ms at 50 Hz
LEAST_SHOWN = 20.0  # degrees: a shorter pause is no pause to point at


def waveform(circuit: str, place: str = "", title: str = "", names_type: bool = True) -> Picture:
    """Draw one circuit's fault current through 1 kohm, with its average and its longest pause.

    Inputs: a key of circuits.toml; the place of the fault, the circuit's usual one if left out;
    the title, the circuit's name if left out; whether the type that the circuit alone calls
    for is named, which a page with an answer of its own leaves out.
    """
    reply = checkers.run(
        "fault-waveform", {"circuit": circuit, "fault_resistance": "1 kohm", "place": place}
    )
    answer = answer_of(reply)
    points = _shown(answer)
    across, up = _scales(points)
    return Picture(
        key=f"waveform-{circuit}{'-' + place if place else ''}",
        title=title or _title(circuit, answer),
        describes=_describes(circuit, answer),
        height=230.0,
        parts=(
            _pauses(points, answer, across, up),
            grid(across, up, _times(points), _currents(up), ("ms", "mA")),
            line((across.start, up.at(0.0)), (across.end, up.at(0.0)), "picture__axis"),
            path([(across.at(t), up.at(i)) for t, i in points], _kind(answer)),
            _average(answer, across, up),
        ),
        caption=_caption(answer) + (_type(answer) if names_type else ""),
        sources=SOURCES,
    )


def _shown(answer: dict[str, Any]) -> list[Point]:
    """Return the points of the whole course, or of a mains cycle where switching would blur it."""
    points = [(time, current) for time, current in answer["points"]]
    if answer["class"] != WaveformClass.COMPOSITE:
        return points
    return [(time, current) for time, current in points if time <= MAINS_CYCLE]


def _kind(answer: dict[str, Any]) -> str:
    thin = answer["class"] == WaveformClass.COMPOSITE
    return f"picture__line{' picture__line--thin' if thin else ''}"


def _scales(points: Sequence[Point]) -> tuple[Scale, Scale]:
    currents = [current for _, current in points]
    low, high = min(0.0, *currents), max(0.0, *currents)
    return (
        Scale(0.0, ceil(points[-1][0]), *ACROSS),
        Scale(ROOM * low, ROOM * high, *UP),
    )


def _times(points: Sequence[Point]) -> dict[float, str]:
    end = ceil(points[-1][0])
    return {share * end: figure(round(share * end, 1)) for share in (0.0, 0.25, 0.5, 0.75, 1.0)}


def _currents(up: Scale) -> dict[float, str]:
    return {value: figure(value) for value in up.marks()}


def _average(answer: dict[str, Any], across: Scale, up: Scale) -> str:
    average = amount(answer["average"])
    if answer["ripple"] == "no direct part":
        return ""
    y = up.at(average)
    return line((across.start, y), (across.end, y), "picture__line picture__line--second") + label(
        (across.end - 3.0, y - 5.0),
        f"average {average:.0f} mA",
        anchor="end",
        kind="picture__text--plate",
    )


def _pauses(points: Sequence[Point], answer: dict[str, Any], across: Scale, up: Scale) -> str:
    """Hatch where the current stays at or under what counts as nothing, if that lasts."""
    if amount(answer["longest_low_interval"]) < LEAST_SHOWN:
        return ""
    least = LEAST_SHOWN / 18.0  # ms at 50 Hz
    return "".join(
        hatched(
            (across.at(start), up.end),
            across.at(end) - across.at(start),
            up.start - up.end,
            "picture__zone",
        )
        for start, end in low_stretches(points, BOUNDS.low_current)
        if end - start >= least
    )


def low_stretches(points: Sequence[Point], bound: float) -> Iterator[tuple[float, float]]:
    """Yield from when to when a drawn current stays at or under a bound, either way round."""
    start: float | None = None
    for (t0, i0), (t1, i1) in pairwise(points):
        inside = _inside(t0, i0, t1, i1, bound)
        if inside is None:
            continue
        begins, ends = inside
        if start is None:
            start = begins
        if ends < t1:
            yield start, ends
            start = None
    if start is not None:
        yield start, points[-1][0]


def _inside(t0: float, i0: float, t1: float, i1: float, bound: float) -> tuple[float, float] | None:
    """Return the part of one straight piece that is at or under the bound, or None."""
    if i0 == i1:
        return (t0, t1) if abs(i0) <= bound else None
    shares = sorted(((side * bound - i0) / (i1 - i0)) for side in (-1.0, 1.0))
    begins, ends = max(shares[0], 0.0), min(shares[1], 1.0)
    return (t0 + begins * (t1 - t0), t0 + ends * (t1 - t0)) if begins < ends else None


def _title(circuit: str, answer: dict[str, Any]) -> str:
    return f"{CIRCUITS[circuit].name}: fault on {PLACES[answer['place']]}"


def _describes(circuit: str, answer: dict[str, Any]) -> str:
    low = amount(answer["longest_low_interval"])
    return (
        f"{CIRCUITS[circuit].what} Earth-fault current at 230 V through 1 kohm: "
        f"average {amount(answer['average']):.0f} mA, r.m.s. {amount(answer['rms']):.0f} mA, "
        f"peak {amount(answer['peak']):.0f} mA; at or under {BOUNDS.low_current:g} mA for "
        f"{low:.0f} degrees at the longest. Class: {answer['class']}."
    )


def _caption(answer: dict[str, Any]) -> str:
    low = amount(answer["longest_low_interval"])
    pause = (
        f" Hatched: at or under {BOUNDS.low_current:g} mA, for {low:.0f}° at the longest."
        if low >= LEAST_SHOWN
        else ""
    )
    return (
        f"{str(answer['class']).capitalize()}: {answer['class_meaning']}. "
        f"{amount(answer['rms']):.0f} mA r.m.s. at 230 V through 1 kohm.{pause}{_cut(answer)}"
    )


def _type(answer: dict[str, Any]) -> str:
    return f" The circuit calls for type {answer['type']}."


def _cut(answer: dict[str, Any]) -> str:
    end = answer["points"][-1][0]
    cut = answer["class"] == WaveformClass.COMPOSITE
    return f" Shown is one mains cycle; the whole repeats after {end:.0f} ms." if cut else ""
