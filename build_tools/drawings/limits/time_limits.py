"""Break-time limits against the test current, from the limit tables: one device a picture."""

from __future__ import annotations

from dataclasses import dataclass

from build_tools.drawings.scales import Scale, figure, grid
from build_tools.drawings.svg import Picture, Point, dot, label, path
from build_tools.files.identity import day_of_sources
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.domain.limits.words import WAVEFORMS, amount_in_words
from checkers.domain.quantities.quantity import parse_quantity

ACROSS, UP = (60.0, 346.0), (208.0, 30.0)
INSTRUMENT_REACH = 2000.0  # mA: beyond it is a short circuit, no test
ONE_OF_TWO = "quarter-ampere"  # the maker's other choice; drawn is the stricter one
STEPS = 24  # points that draw a curve


@dataclass(frozen=True, slots=True)
class Limit:
    """From a current on [mA]: the least and the greatest time [ms], where there are such."""

    current: float
    least: float | None
    most: float | None
    row: Row


def time_limits(
    type: str = "A",  # noqa: A002  # the word of the limit tables
    rated: str = "30 mA",
    waveform: str = "ac",
    delay: str = "none",
    form: str = "rccb",
) -> Picture:
    """Draw how long a device may take at each current, and how long it must wait if delayed.

    Inputs: the device and the waveform, as the limit tables name them.
    Raises ValueError where the tables set it no times.
    """
    limits = limits_of(type, rated, waveform, delay, form)
    if not limits:
        raise ValueError(f"no time limits for type {type}, {waveform}, {form}")
    across, up = _scales(limits)
    named = _named(type, rated, delay, form)
    return Picture(
        key=f"times-{form}-{type}-{rated}-{waveform}-{delay}".replace(" ", "").replace("+", "plus"),
        title=f"{named}: greatest break times on {WAVEFORMS[waveform]}",
        describes=" ".join(_sentence(one) for one in limits if one.row.formula == ())
        or _curve(limits),
        height=246.0,
        parts=(
            _too_slow(limits, across, up),
            _too_quick(limits, across, up),
            grid(across, up, _currents(limits), _times(up), ("mA", "")),
            _steps(limits, across, up, "most", "picture__line"),
            _steps(limits, across, up, "least", "picture__line picture__line--second"),
            *(_point(one, across, up) for one in _marked(limits)),
            label(
                (across.end - 4.0, up.end + 16.0),
                "too slow",
                anchor="end",
                kind="picture__text--strong",
            ),
            *_quick_words(limits, across, up),
        ),
        caption=f"{named}, {WAVEFORMS[waveform]}. {_how_to_read(limits)}",
        sources=tuple(dict.fromkeys(one.row.citation.words for one in limits)),
    )


def limits_of(type_: str, rated: str, waveform: str, delay: str, form: str) -> list[Limit]:
    """Return the time limits of a device, lowest current first."""
    value = parse_quantity(rated, "rated_residual_current")
    asked = {"form": form, "waveform": waveform, "rated": value}
    if form not in ("gfci", "rdc-dd"):
        asked |= {"type": type_, "delay": delay}
    found = rows("trip-time", on=day_of_sources(), **asked)
    limits = []
    for row in found:
        if row.formula:
            limits += _on_the_curve(row)
            continue
        current = row.level(value)
        if current is None or current > INSTRUMENT_REACH or _other_choice(row):
            continue
        limits.append(Limit(current, row.at_least(value), row.at_most(value), row))
    return limits


def _other_choice(row: Row) -> bool:
    return row.when.only("option") == frozenset({ONE_OF_TWO})


def _on_the_curve(row: Row) -> list[Limit]:
    """Return points of a limit that is a formula over a range of currents."""
    limits = []
    for piece in row.formula:
        low, high = piece.over.low, piece.over.high
        for step in range(STEPS + 1):
            current = round(low * (high / low) ** (step / STEPS), 1)
            time = piece.time(min(current, high))
            if time is not None:
                limits.append(Limit(current, None, time, row))
    return limits


def _scales(limits: list[Limit]) -> tuple[Scale, Scale]:
    least = min(one.least or one.most or 1.0 for one in limits)
    most = max(one.most or one.least or 1.0 for one in limits)
    first, last = limits[0].current, limits[-1].current
    return (
        Scale(first / 1.6, last * 2.4, *ACROSS, by_powers=True),
        Scale(min(10.0, least / 2.0), most * 3.0, *UP, by_powers=True),
    )


def _currents(limits: list[Limit]) -> dict[float, str]:
    return {one.current: figure(round(one.current, 1)) for one in _marked(limits)}


def _marked(limits: list[Limit]) -> list[Limit]:
    """Return the points of the table; of a curve, its ends and what lies near 30 mA."""
    if not any(one.row.formula for one in limits):
        return limits
    near = min(limits, key=lambda one: abs(one.current - 30.0))
    return [limits[0], near, limits[-1]]


def _times(up: Scale) -> dict[float, str]:
    return {time: amount_in_words(time, "ms") for time in up.marks()}


def _corners(limits: list[Limit], across: Scale, up: Scale, which: str) -> list[Point]:
    """Return the corners of a limit: it holds from each current to the next, the last on."""
    held = [(one.current, getattr(one, which), bool(one.row.formula)) for one in limits]
    held = [one for one in held if one[1] is not None]
    corners: list[Point] = []
    for (current, time, curved), after in zip(held, [*held[1:], None], strict=False):
        corners.append((across.at(current), up.at(time)))
        if not curved:
            corners.append((across.at(after[0]) if after else across.end, up.at(time)))
    return corners


def _steps(limits: list[Limit], across: Scale, up: Scale, which: str, kind: str) -> str:
    corners = _corners(limits, across, up, which)
    return path(corners, kind) if corners else ""


def _too_slow(limits: list[Limit], across: Scale, up: Scale) -> str:
    corners = _corners(limits, across, up, "most")
    return path(
        [(corners[0][0], up.end), *corners, (corners[-1][0], up.end)],
        "picture__zone--bad",
        closed=True,
    )


def _too_quick(limits: list[Limit], across: Scale, up: Scale) -> str:
    corners = _corners(limits, across, up, "least")
    if not corners:
        return ""
    ends = [(corners[0][0], up.start), *corners, (corners[-1][0], up.start)]
    return path(ends, "picture__zone--open", closed=True)


def _quick_words(limits: list[Limit], across: Scale, up: Scale) -> list[str]:
    if not any(one.least for one in limits):
        return []
    at = (across.end - 4.0, up.start - 8.0)
    return [label(at, "too quick", anchor="end", kind="picture__text--strong")]


def _point(limit: Limit, across: Scale, up: Scale) -> str:
    x = across.at(limit.current)
    marks = []
    for time, above in ((limit.most, True), (limit.least, False)):
        if time is None:
            continue
        y = up.at(time)
        words = amount_in_words(round(time), "ms")
        marks.append(dot((x, y), 4.5, "picture__mark"))
        marks.append(
            label((x + 7.0, y - 7.0 if above else y + 17.0), words, kind="picture__text--plate")
        )
    return "".join(marks)


def _how_to_read(limits: list[Limit]) -> str:
    if any(one.row.formula for one in limits):
        return "Both scales go by powers of ten."
    return "A step holds until the next point of the table. Both scales go by powers of ten."


def _named(type_: str, rated: str, delay: str, form: str) -> str:
    if form == "gfci":
        return "GFCI, class A"
    if form == "rdc-dd":
        return "6 mA DC detection"
    return f"Type {type_}, {rated}{'' if delay == 'none' else f', {delay}'}"


def _sentence(limit: Limit) -> str:
    ends = [
        words
        for words, time in (("at least", limit.least), ("at most", limit.most))
        if time is not None
        for words in (f"{words} {amount_in_words(time, 'ms')}",)
    ]
    return f"From {amount_in_words(limit.current, 'mA')}: {' and '.join(ends)}."


def _curve(limits: list[Limit]) -> str:
    return (
        f"From {amount_in_words(limits[0].most or 0.0, 'ms')} at "
        f"{amount_in_words(limits[0].current, 'mA')}, falling to "
        f"{amount_in_words(round(limits[-1].most or 0.0), 'ms')} at "
        f"{amount_in_words(limits[-1].current, 'mA')}."
    )
