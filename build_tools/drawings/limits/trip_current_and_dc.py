"""AC trip current against smooth DC in the core, with its band and what was seen on the bench."""

from __future__ import annotations

from typing import Any

import checkers
from build_tools.drawings.answers import amount, answer_of, sources_of
from build_tools.drawings.scales import Scale, figure, grid
from build_tools.drawings.svg import Picture, Point, arrow, dot, label, line, path
from checkers.domain.quantities.quantity import parse_quantity

ACROSS, UP = (40.0, 346.0), (226.0, 26.0)
HALF = 0.5  # of the rating: what the picture leaves above its greatest value


def trip_current_and_dc(
    type: str = "AC",  # noqa: A002  # the word of the limit tables
    rated: str = "30 mA",
    reach: str = "250 mA",
    own: str = "",
) -> Picture:
    """Draw how far smooth DC moves the trip current of a device of a type.

    Inputs: the device; the smooth DC up to which to draw; its trip current without DC, anywhere
    a sound device may have it if left out.
    """
    request = {
        "device": {"type": type, "rated_residual_current": rated},
        "dc_residual": reach,
        **({"own_trip_current": own} if own else {}),
    }
    reply = checkers.run("dc-bias", request)
    answer = answer_of(reply)
    end, rating = (parse_quantity(text, "dc_residual") for text in (reach, rated))
    across = Scale(0.0, end, *ACROSS)
    up = Scale(0.0, _top(answer, end) + HALF * rating, *UP)
    return Picture(
        key=f"dc-bias-{type}-{rated}-{reach}".replace(" ", "").replace("+", "plus"),
        title=f"AC trip current of a {rated} type {type} device against smooth DC in its core",
        describes=_describes(answer, end, rating),
        height=264.0,
        parts=(
            path(_band(answer, across, up, end), "picture__band", closed=True),
            grid(
                across, up, _marks(across), _marks(up), ("smooth DC [mA]", "AC trip current [mA]")
            ),
            *_level(rating, f"rating: {rated}", across, up),
            *_button(answer, across, up),
            *_opens_alone(answer, across, up),
            path(_curve(answer, across, up, end), "picture__line"),
            *_known(answer, across, up, end),
        ),
        caption=_caption(answer),
        sources=sources_of(reply),
    )


def _cut(points: list[Point], end: float) -> list[Point]:
    """Return the points up to an end, the last one on the straight line across it."""
    inside = [point for point in points if point[0] <= end]
    beyond = [point for point in points if point[0] > end]
    if not beyond or not inside or inside[-1][0] == end:
        return inside
    (x0, y0), (x1, y1) = inside[-1], beyond[0]
    return [*inside, (end, y0 + (end - x0) / (x1 - x0) * (y1 - y0))]


def _band_ends(answer: dict[str, Any], end: float) -> tuple[list[Point], list[Point]]:
    low = [(one["dc_residual"], one["low"]) for one in answer["band"]]
    high = [(one["dc_residual"], one["high"]) for one in answer["band"]]
    return _cut(low, end), _cut(high, end)


def _top(answer: dict[str, Any], end: float) -> float:
    _, high = _band_ends(answer, end)
    return max(value for _, value in high)


def _band(answer: dict[str, Any], across: Scale, up: Scale, end: float) -> list[Point]:
    low, high = _band_ends(answer, end)
    return [(across.at(dc), up.at(trip)) for dc, trip in (*high, *reversed(low))]


def _curve(answer: dict[str, Any], across: Scale, up: Scale, end: float) -> list[Point]:
    points = _cut([(dc, trip) for dc, trip in answer["points"]], end)
    return [(across.at(dc), up.at(trip)) for dc, trip in points]


def _marks(scale: Scale) -> dict[float, str]:
    return {value: figure(value) for value in scale.marks()}


def _level(
    value: float, words: str, across: Scale, up: Scale, below: float = -5.0
) -> tuple[str, str]:
    y = up.at(value)
    return (
        line((across.start, y), (across.end, y), "picture__line picture__line--second"),
        label((across.end - 3.0, y + below), words, anchor="end", kind="picture__text--plate"),
    )


def _button(answer: dict[str, Any], across: Scale, up: Scale) -> tuple[str, ...]:
    current = amount(answer["button_current"]) if answer["button_current"] else 0.0
    if not 0.0 < current < up.high:
        return ()
    words = f"most a test button drives: {current:g} mA"
    return _level(current, words, across, up, below=16.0)


def _opens_alone(answer: dict[str, Any], across: Scale, up: Scale) -> tuple[str, ...]:
    """Say where the DC alone opens a type that senses it: from there on no AC is needed."""
    opened = [dc for dc, trip in answer["points"] if trip == 0.0]
    if not opened or min(opened) > across.high:
        return ()
    at = (across.at(min(opened)) - 6.0, up.start - 10.0)
    words = f"{min(opened):g} mA of DC opens it"
    return (label(at, words, anchor="end", kind="picture__text--plate"),)


def _known(answer: dict[str, Any], across: Scale, up: Scale, end: float) -> list[str]:
    parts: list[str] = []
    for point in answer["known_points"]:
        dc, trip = amount(point["dc_residual"]), amount(point["ac_trip_current"])
        if dc > end:
            continue
        at = (across.at(dc), up.at(trip))
        right = at[0] > (across.start + across.end) / 2.0
        if point["kind"] == "declared":
            words = f"at most {trip:g} mA with {dc:g} mA"
            parts.extend(_at_most(at))
        else:
            words = f"{trip:g} mA with {dc:g} mA"
            parts.append(dot(at, 5.5, "picture__mark"))
        parts.append(
            label(
                (at[0] - 9.0, at[1] - 6.0) if right else (at[0] + 4.0, at[1] - 12.0),
                words,
                anchor="end" if right else "start",
                kind="picture__text--strong picture__text--plate",
            )
        )
    return parts


def _at_most(at: Point) -> tuple[str, str]:
    """Draw what nobody measured: a bar with an arrow down, for at most."""
    across, up = at
    return (
        line((across - 7.0, up), (across + 7.0, up), "picture__arrow"),
        arrow(at, (across, up + 13.0)),
    )


def _describes(answer: dict[str, Any], end: float, rating: float) -> str:
    points = [point for point in answer["points"] if point[0] <= end]
    curve = ", ".join(f"{trip:.0f} mA at {dc:.0f} mA of DC" for dc, trip in points)
    known = "; ".join(
        f"{amount(one['ac_trip_current']):g} mA at {amount(one['dc_residual']):g} mA of DC, "
        f"{one['says']} ({one['source']})"
        for one in answer["known_points"]
    )
    return (
        f"Rating {rating:g} mA. Typical trip current by the model: {curve}. "
        f"Points drawn in: {known or 'none'}."
    )


def _caption(answer: dict[str, Any]) -> str:
    return (
        "Line: typical device, calculated. Band: a judged spread of devices, no confidence "
        f"interval.{_marked(answer, 'measured', 'Dots, seen on the bench')}"
        f"{_marked(answer, 'declared', 'Bar with an arrow, declared and not measured')}"
    )


def _marked(answer: dict[str, Any], kind: str, words: str) -> str:
    says = dict.fromkeys(one["says"] for one in answer["known_points"] if one["kind"] == kind)
    return f" {words}: {'; '.join(says)}." if says else ""
