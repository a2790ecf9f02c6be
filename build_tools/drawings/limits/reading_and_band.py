"""A reading against the band it is judged by, with what the readings checker says of it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import checkers
from build_tools.drawings.answers import sources_of
from build_tools.drawings.scales import Scale, figure, grid
from build_tools.drawings.svg import Picture, box, dot, hatched, label, line
from build_tools.files.identity import day_of_sources
from checkers.domain.device.readings import EXPECTED
from checkers.domain.limits.tables import rows, rows_in
from checkers.domain.quantities.measured_value import Measured, Said, parse_measured
from checkers.domain.quantities.quantity import parse_quantity
from checkers.domain.quantities.ranges import range_in_words

ACROSS = (14.0, 346.0)
TOP, STRIP = 22.0, 30.0
FIRST_READING, READING = 76.0, 30.0
BEYOND = 1.35  # how far past the greater of limit and reading the scale goes
LOW_WORDS = {"ramp": "must hold", "trip-time": "too quick"}
HIGH_WORDS = {"ramp": "too much", "trip-time": "too slow"}
MEASURES = {"ramp": "operating-current", "trip-time": "trip-time"}
UNCERTAINTIES = "iec-61557-6/operating-uncertainties"


@dataclass(frozen=True, slots=True)
class Asked:
    """One test on one device, as a request names it, with the rating [mA]."""

    device: Mapping[str, str]
    test: Mapping[str, str | float]

    @property
    def rated(self) -> float:
        """The rated residual current [mA]."""
        return parse_quantity(self.device["rated_residual_current"], "rated_residual_current")

    @property
    def kind(self) -> str:
        """Ramp or trip-time."""
        return str(self.test["test"])

    @property
    def named(self) -> str:
        """The test and the device in words."""
        what = "Trip current" if self.kind == "ramp" else f"Trip time at ×{self.test['multiple']:g}"
        return f"{what}, type {self.device['type']}, {self.device['rated_residual_current']}"


@dataclass(frozen=True, slots=True)
class Shown:
    """A reading, its expanded uncertainty in its own unit, and the verdict in a word."""

    measured: Measured
    uncertainty: float
    verdict: str


def reading_and_band(
    values: Sequence[str], device: Mapping[str, str], test: Mapping[str, str | float]
) -> Picture:
    """Draw readings of one test against the limits of the device standard.

    Inputs: the readings as written down; the device and the test as a request names them, the
    test with its waveform, and with its multiple if it is a trip time.
    """
    asked = Asked({"type": "A", "rated_residual_current": "30 mA", **device}, test)
    low, high, unit = _limits(asked)
    judged = [_judged(value, asked, high) for value in values]
    shown = [one for one, _ in judged]
    across = Scale(0.0, BEYOND * max(high, *(one.measured.value for one in shown)), *ACROSS)
    bottom = FIRST_READING + READING * len(shown) - 8.0
    return Picture(
        key=f"band-{asked.kind}-{'-'.join(values)}".translate(str.maketrans(" >.,", "_o--")),
        title=f"{asked.named}: readings against their band",
        describes=_describes(low, high, unit, shown),
        height=bottom + 36.0,
        parts=(
            grid(across, Scale(0.0, 1.0, bottom, TOP), _marks(low, high), {}, (unit, "")),
            *_zones(low, high, across, LOW_WORDS[asked.kind], HIGH_WORDS[asked.kind]),
            *(_reading(one, across, FIRST_READING + READING * n) for n, one in enumerate(shown)),
        ),
        caption=f"{asked.named}. The bar at a reading is the uncertainty of the instrument, taken "
        "as the most that its standard allows.",
        sources=tuple(dict.fromkeys(source for _, sources in judged for source in sources)),
    )


def _limits(asked: Asked) -> tuple[float, float, str]:
    """Return the least and the greatest value, and their unit."""
    timed = asked.kind == "trip-time"
    row = rows(
        MEASURES[asked.kind],
        on=day_of_sources(),
        form=asked.device.get("form", "rccb"),
        type=asked.device["type"],
        waveform=asked.test["waveform"],
        rated=asked.rated,
        delay=asked.device.get("delay", "none") if timed else None,
        multiple=asked.test["multiple"] if timed else None,
    )[0]
    high = row.at_most(asked.rated)
    if high is None:
        raise ValueError(f"no greatest value for {asked.named}")
    return row.at_least(asked.rated) or 0.0, high, row.unit


def _judged(value: str, asked: Asked, high: float) -> tuple[Shown, tuple[str, ...]]:
    reading = {**asked.test, "value": value}
    reply = checkers.run("readings", {"device": asked.device, "readings": [reading]})
    verdict = reply["findings"][0]["outcome"].replace("-", " ")
    measured = parse_measured(value, EXPECTED[asked.kind])
    return Shown(measured, _uncertainty(asked, high), verdict), sources_of(reply)


def _uncertainty(asked: Asked, high: float) -> float:
    on = day_of_sources()
    share = rows_in(UNCERTAINTIES, on=on, quantity=MEASURES[asked.kind])[0].at_most() or 0.0
    return share * (asked.rated if asked.kind == "ramp" else high)


def _marks(low: float, high: float) -> dict[float, str]:
    return {value: figure(value) for value in dict.fromkeys((0.0, low, high))}


def _zones(low: float, high: float, across: Scale, below: str, above: str) -> list[str]:
    zones = [
        _zone(across.at(low), across.at(high), "may operate", ""),
        _zone(across.at(high), across.end, above, "picture__zone--bad"),
    ]
    held = _zone(across.start, across.at(low), below, "picture__zone--open")
    return [held, *zones] if low else zones


def _zone(start: float, end: float, words: str, kind: str) -> str:
    corner, at = (start, TOP), ((start + end) / 2.0, TOP + STRIP / 2.0 + 4.5)
    plain = box(corner, end - start, STRIP, "picture__part")
    area = hatched(corner, end - start, STRIP, kind) if kind else plain
    kinds = "picture__text--strong picture__text--plate"
    return area + label(at, words, anchor="middle", kind=kinds)


def _reading(shown: Shown, across: Scale, y: float) -> str:
    value, spread = shown.measured.value, shown.uncertainty
    x = across.at(value)
    whole = shown.measured.said is Said.FIGURE
    ends = (value - spread, value + spread) if whole else (value, across.high)
    start, end = (across.at(one) for one in ends)
    leftward = x > (across.start + across.end) / 2.0
    at = (start - 8.0, y + 4.5) if leftward else (end + 8.0, y + 4.5)
    return (
        line((start, y), (end, y), "picture__whisker")
        + dot((x, y), 5.0, "picture__mark")
        + label(
            at,
            f"{shown.measured}: {shown.verdict}",
            anchor="end" if leftward else "start",
            kind="picture__text--strong picture__text--plate",
        )
    )


def _describes(low: float, high: float, unit: str, shown: list[Shown]) -> str:
    ends = range_in_words(low or None, high, unit)
    span = f"from {ends}" if low else ends
    readings = "; ".join(f"{one.measured}: {one.verdict}" for one in shown)
    return f"It may operate {span}. {readings}."
