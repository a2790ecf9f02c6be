"""Parts of circuit diagrams: valves, capacitor, motor, the sensing core, earth and a fault."""

from __future__ import annotations

from build_tools.drawings.svg import Point, arrow, box, dot, element, label, line, path

HALF = 9.0  # half the width of a valve


def joint(at: Point) -> str:
    """Return the dot where conductors are joined."""
    return dot(at, 2.6, "picture__solid")


def diode(at: Point, *, upward: bool, fired: bool) -> str:
    """Return a diode that lets current pass upward or downward; a fired one has a gate."""
    x, y = at
    tip, base = (y - HALF, y + HALF) if upward else (y + HALF, y - HALF)
    triangle = path([(x - HALF, base), (x + HALF, base), (x, tip)], "picture__part", closed=True)
    bar = line((x - HALF, tip), (x + HALF, tip), "picture__wire")
    gate = line((x + 3.0, tip), (x + HALF + 4.0, tip - (base - tip) * 0.4), "picture__wire")
    return triangle + bar + (gate if fired else "")


def capacitor(top: Point, bottom: Point) -> str:
    """Return a capacitor between two conductors one above the other."""
    x, middle = top[0], (top[1] + bottom[1]) / 2.0
    plates = [
        line((x - 12.0, y), (x + 12.0, y), "picture__wire") for y in (middle - 3.5, middle + 3.5)
    ]
    wires = [
        line(top, (x, middle - 3.5), "picture__wire"),
        line((x, middle + 3.5), bottom, "picture__wire"),
    ]
    return "".join([*wires, *plates, joint(top), joint(bottom)])


def part(corner: Point, width: float, height: float, words: str) -> str:
    """Return a box with its name."""
    middle = (corner[0] + width / 2.0, corner[1] + height / 2.0 + 4.5)
    named = label(middle, words, anchor="middle") if words else ""
    return box(corner, width, height, "picture__part") + named


def motor(at: Point) -> str:
    """Return a motor."""
    return dot(at, 16.0, "picture__part") + label(
        (at[0], at[1] + 5.0), "M", anchor="middle", kind="picture__text--strong"
    )


def core(at: Point, half_height: float) -> str:
    """Return the ring of a sensing core, seen from the side, round the conductors it watches."""
    return element("ellipse", cx=at[0], cy=at[1], rx=9.0, ry=half_height, kind="picture__ring")


def earth(at: Point) -> str:
    """Return the sign of an earth connection, hung from a point."""
    x, y = at
    return "".join(
        line((x - half, y + place * 4.0), (x + half, y + place * 4.0), "picture__wire")
        for place, half in enumerate((9.0, 6.0, 3.0))
    )


def fault(at: Point, *, named_below: bool = False) -> str:
    """Return an earth fault: a flash from a conductor to earth, to the right of it."""
    x, y = at
    flash = [(x, y), (x + 16.0, y + 8.0), (x + 10.0, y + 12.0)]
    end = (x + 28.0, y + 24.0)
    named_at = (end[0], end[1] + 28.0) if named_below else (end[0] + 14.0, end[1] + 6.0)
    anchor = "middle" if named_below else "start"
    return (
        path(flash, "picture__arrow")
        + arrow(flash[-1], end)
        + earth((end[0], end[1] + 2.0))
        + label(named_at, "fault", anchor=anchor, kind="picture__text--strong")
    )
