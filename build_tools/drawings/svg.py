"""SVG from plain values: elements, texts and lines, and the picture that holds them.

A picture is drawn for the width of a phone; its colours, dashes and type come from drawing.css.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape

WIDTH = 360.0
LINE_HEIGHT = 16.0

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing and its words: without them it says nothing to who cannot see it.

    `key` is unique on a page; `describes` holds what the drawing shows, figures included;
    `sources` are the citations of those figures.
    """

    key: str
    title: str
    describes: str
    height: float
    parts: tuple[str, ...]
    caption: str = ""
    sources: tuple[str, ...] = ()

    @property
    def svg(self) -> str:
        """The drawing as an image with a title and a description."""
        title, words = f"{self.key}-title", f"{self.key}-words"
        return element(
            "svg",
            element("title", escape(self.title), id=title),
            element("desc", escape(self.describes), id=words),
            *self.parts,
            viewBox=f"0 0 {number(WIDTH)} {number(self.height)}",
            role="img",
            data_search_exclude="",
            aria_labelledby=title,
            aria_describedby=words,
        )


def number(value: float) -> str:
    """Return a coordinate to a tenth of a unit, which is a tenth of a pixel or so."""
    written = f"{value:.1f}".removesuffix(".0")
    return "0" if written == "-0" else written


def element(name: str, *inner: str, **attributes: str | float | None) -> str:
    """Return an element; `kind` is its class, an underscore of a name becomes a hyphen."""
    written = "".join(
        f' {_name(key)}="{escape(value) if isinstance(value, str) else number(value)}"'
        for key, value in attributes.items()
        if value is not None
    )
    return f"<{name}{written}>{''.join(inner)}</{name}>" if inner else f"<{name}{written}/>"


def _name(key: str) -> str:
    return "class" if key == "kind" else key.replace("_", "-")


def group(kind: str, *inner: str) -> str:
    """Return parts under one class."""
    return element("g", *inner, kind=kind)


def label(at: Point, words: str, *, anchor: str = "start", kind: str = "") -> str:
    """Return a text that starts, ends or is centred at a point of its base line."""
    classes = f"picture__text {kind}".strip()
    return element(
        "text", escape(words), x=at[0], y=at[1], text_anchor=_anchor(anchor), kind=classes
    )


def labels(at: Point, lines: Iterable[str], *, anchor: str = "start", kind: str = "") -> str:
    """Return lines of text one below the other."""
    x, y = at
    return "".join(
        label((x, y + place * LINE_HEIGHT), words, anchor=anchor, kind=kind)
        for place, words in enumerate(lines)
    )


def _anchor(anchor: str) -> str | None:
    return None if anchor == "start" else anchor


def path(points: Iterable[Point], kind: str, *, closed: bool = False) -> str:
    """Return a line through points, or the area they enclose."""
    steps = [
        f"{'L' if place else 'M'}{number(x)} {number(y)}" for place, (x, y) in enumerate(points)
    ]
    return element("path", d="".join(steps) + ("Z" if closed else ""), kind=kind)


def line(start: Point, end: Point, kind: str) -> str:
    """Return a straight line."""
    return path((start, end), kind)


def box(
    corner: Point, width: float, height: float, kind: str, round_by: float | None = None
) -> str:
    """Return a rectangle from its upper left corner."""
    return element(
        "rect", x=corner[0], y=corner[1], width=width, height=height, rx=round_by, kind=kind
    )


def dot(at: Point, radius: float, kind: str) -> str:
    """Return a circle."""
    return element("circle", cx=at[0], cy=at[1], r=radius, kind=kind)


def arrow(start: Point, end: Point, kind: str = "picture__arrow", size: float = 5.0) -> str:
    """Return a straight arrow."""
    (x0, y0), (x1, y1) = start, end
    length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
    ux, uy = (x1 - x0) / length, (y1 - y0) / length
    back = (x1 - 1.8 * size * ux, y1 - 1.8 * size * uy)
    head = (
        end,
        (back[0] - 0.8 * size * uy, back[1] + 0.8 * size * ux),
        (back[0] + 0.8 * size * uy, back[1] - 0.8 * size * ux),
    )
    return line(start, back, kind) + path(head, "picture__head", closed=True)


def hatched(corner: Point, width: float, height: float, kind: str, spacing: float = 8.0) -> str:
    """Return an area with slanting lines, so that it is told from a plain one without colour."""
    x0, y0 = corner
    lines = []
    offset = spacing
    while offset < width + height:
        start = (x0 + min(offset, width), y0 + max(0.0, offset - width))
        end = (x0 + max(0.0, offset - height), y0 + min(offset, height))
        lines.append(line(start, end, "picture__hatch"))
        offset += spacing
    return box(corner, width, height, kind) + "".join(lines)
