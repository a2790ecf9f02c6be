"""Devices and loads below one another, with the smooth DC through each and its verdict."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from build_tools.drawings.answers import answer_of, sources_of
from build_tools.drawings.svg import Picture, Point, dot, labels, path
from checkers import run

LINE, GAP, STEP = 16.0, 12.0, 21.0  # as tall, and as far to the right, as the rows are cut for
SIGN = 20.0  # width of a verdict's shape
CLEAR = 7.0  # between the shape and the text

Row = Mapping[str, Any]


def arrangement(
    key: str,
    title: str,
    devices: Sequence[Mapping[str, str]],
    loads: Sequence[Mapping[str, str]],
    caption: str = "",
) -> Picture:
    """Draw an arrangement as the series checker judges it.

    Inputs: a key that is unique on the page, a title, the devices and loads as in a request.
    Raises ValueError where the checker refuses them.
    """
    reply = run("series", {"devices": devices, "loads": loads})
    rows = answer_of(reply)["drawing"]
    tops = [_top(row, place) for place, row in enumerate(rows)]
    return Picture(
        key=f"arrangement-{key}",
        title=title,
        describes=". ".join(" ".join(row["lines"]) for row in rows) + ".",
        height=tops[-1] + LINE * len(rows[-1]["lines"]) + 4.0,
        parts=(
            *(_joint(rows, tops, place) for place in range(len(rows))),
            *(part for row, top in zip(rows, tops, strict=True) for part in _row(row, top)),
        ),
        caption=caption,
        sources=sources_of(reply),
    )


def _top(row: Row, place: int) -> float:
    return float(row["top"]) * LINE + place * GAP + 2.0


def _left(row: Row) -> float:
    return float(row["depth"]) * STEP + 2.0


def _joint(rows: Sequence[Row], tops: Sequence[float], place: int) -> str:
    """Return the line from a row to the one it hangs on."""
    above = rows[place]["above"]
    if above is None:
        return ""
    x, y = _left(rows[above]) + SIGN / 2.0, tops[place] + SIGN / 2.0
    return path([(x, tops[above] + SIGN), (x, y), (_left(rows[place]), y)], "tree__joint")


def _row(row: Row, top: float) -> list[str]:
    left = _left(row)
    at = (left + SIGN + CLEAR, top + 14.0)
    middle = (left + SIGN / 2.0, top + SIGN / 2.0)
    if row["kind"] == "load":
        soft = labels(at, row["lines"], kind="picture__text--soft")
        return [dot(middle, 5.0, "tree__load"), soft]
    first, *others = row["lines"]
    return [
        _sign(row["verdict"], middle),
        labels(at, [first], kind="picture__text--strong"),
        labels((at[0], at[1] + LINE), others),
    ]


def _sign(verdict: str, middle: Point) -> str:
    """Return the shape of a verdict: a disc, a square, a triangle, or a square on its corner."""
    (x, y), half = middle, SIGN / 2.0
    kind = f"tree__sign tree__sign--{verdict}"
    if verdict == "pass":
        return dot(middle, half - 1.0, kind)
    corners = {
        "fail": [(-0.85, -0.85), (0.85, -0.85), (0.85, 0.85), (-0.85, 0.85)],
        "borderline": [(0.0, -1.0), (1.0, 0.9), (-1.0, 0.9)],
        "cannot-say": [(0.0, -1.0), (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0)],
    }[verdict]
    return path([(x + half * dx, y + half * dy) for dx, dy in corners], kind, closed=True)
