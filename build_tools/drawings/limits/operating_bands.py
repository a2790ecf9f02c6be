"""Between which currents a device of a type must operate, for every waveform it is built for."""

from __future__ import annotations

from dataclasses import dataclass

from build_tools.drawings.scales import Scale, figure, grid
from build_tools.drawings.svg import Picture, box, label, line
from build_tools.files.identity import day_of_sources
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.domain.limits.words import WAVEFORMS
from checkers.domain.quantities.quantity import parse_quantity
from checkers.domain.quantities.ranges import range_in_words

ACROSS = (14.0, 346.0)
TOP, ROW = 30.0, 44.0
ROOM = 1.1
RATED_LINE = "picture__line picture__line--second"
WIDE = 3.0  # ratings: the bands at high frequency would press the others together
RECTIFIED = frozenset({"two-pulse", "three-pulse", "six-pulse"})
RECTIFIED_NAME = "Rectified from two or three phases"
NAMED_FORMS = {"gfci": "GFCI, class A", "rdc-dd": "6 mA DC detection"}
IN_THE_FIELD = ("ac", "half-wave", "half-wave-90", "half-wave-135", "smooth-dc")


@dataclass(frozen=True, slots=True)
class Band:
    """A waveform, and the currents below which a device holds and at which it has operated."""

    name: str
    low: float
    high: float
    row: Row


def operating_bands(
    type: str = "A",  # noqa: A002  # the word of the limit tables
    rated: str = "30 mA",
    form: str = "rccb",
) -> Picture:
    """Draw the band of each waveform; raises ValueError where the tables set none."""
    found = bands_of(type, rated, form)
    if not found:
        raise ValueError(f"no operating bands for type {type}, {form}")
    value = parse_quantity(rated, "rated_residual_current")
    across = Scale(0.0, ROOM * max(value, *(band.high for band in found)), *ACROSS)
    bottom = TOP + ROW * len(found)
    return Picture(
        key=f"bands-{form}-{type}-{rated}".replace(" ", "").replace("+", "plus"),
        title=f"Operating bands: {named(type, rated, form)}",
        describes=" ".join(_sentence(band) for band in found),
        height=bottom + 38.0,
        parts=(
            grid(across, Scale(0.0, 1.0, bottom, TOP - 8.0), _marks(across), {}, ("mA", "")),
            line((across.at(value), TOP - 8.0), (across.at(value), bottom), RATED_LINE),
            *(_bar(band, across, TOP + ROW * place) for place, band in enumerate(found)),
            label(
                (across.at(value), TOP - 14.0), "IΔn", anchor="middle", kind="picture__text--strong"
            ),
        ),
        caption=f"{named(type, rated, form)}. Left of a bar it must hold, right of it it must have "
        "operated; inside, it may. AC and pulsating current in r.m.s., smooth DC as it flows.",
        sources=tuple(dict.fromkeys(band.row.citation.words for band in found)),
    )


def bands_of(type_: str, rated: str, form: str) -> list[Band]:
    """Return the bands of a device, those that instruments test first, without the very wide."""
    value = parse_quantity(rated, "rated_residual_current")
    asked = {"form": form, "rated": value}
    if form not in ("gfci", "rdc-dd"):
        asked["type"] = type_
    bands = {}
    for waveform in sorted(WAVEFORMS, key=lambda one: one not in IN_THE_FIELD):
        for row in rows("operating-current", on=day_of_sources(), waveform=waveform, **asked):
            low, high = row.at_least(value), row.at_most(value)
            if low is not None and high is not None and high <= WIDE * value:
                bands[row] = Band(_name(row, waveform), low, high, row)
    return list(bands.values())


def _name(row: Row, waveform: str) -> str:
    return RECTIFIED_NAME if row.when.only("waveform") == RECTIFIED else WAVEFORMS[waveform]


def named(type_: str, rated: str, form: str) -> str:
    """Return what the device is called in a title."""
    return NAMED_FORMS.get(form, f"Type {type_}, {rated}")


def _marks(across: Scale) -> dict[float, str]:
    return {value: figure(value) for value in across.marks()}


def _bar(band: Band, across: Scale, y: float) -> str:
    start, end = across.at(band.low), across.at(band.high)
    ends = range_in_words(band.low, band.high, "mA")
    return (
        label((ACROSS[0], y + 10.0), band.name, kind="picture__text--plate")
        + label(
            (ACROSS[1], y + 10.0),
            ends,
            anchor="end",
            kind="picture__text--strong picture__text--plate",
        )
        + box((start, y + 16.0), end - start, 16.0, "picture__bar", 3.0)
    )


def _sentence(band: Band) -> str:
    return f"{band.name}: {range_in_words(band.low, band.high, 'mA')}."
