"""The standing leakage of items on three lines: the most that can flow, and the least that must.

Equipment is switched on and off and a line may be missing, so what counts is the worst
combination. Leakage of one nature on one line has one direction; lines stand a third of a
period apart, and capacitive leakage leads by a quarter. The greatest sum over all combinations
is the greatest reach of the parts into any one direction [1].

[1] A zonotope and its support function: G. M. Ziegler, Lectures on Polytopes (1995), 7.3 (from
memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan2, ceil, cos, degrees, hypot, pi, radians, sin

from checkers.domain.inputs.fields import Labelled
from checkers.judgement.leakage.parts import Nature

PIECE = 15  # degrees: within a piece no part changes the way in which it reaches
QUARTER = 90


class Line(Labelled):
    """The line that equipment is fed from, on a three-phase device."""

    UNKNOWN = "unknown", "one of them, not known which"
    L1 = "L1", "L1"
    L2 = "L2", "L2"
    L3 = "L3", "L3"
    THREE_PHASE = "three-phase", "all three: three-phase equipment"


LINE_ANGLES = {Line.L1.value: 0, Line.L2.value: 240, Line.L3.value: 120}
NATURE_ANGLES = {
    Nature.RESISTIVE.value: (0, 0),
    Nature.CAPACITIVE.value: (QUARTER, QUARTER),
    Nature.UNKNOWN.value: (0, QUARTER),
}
ANY_ANGLE = ((0, 360),)


@dataclass(frozen=True, slots=True)
class Part:
    """Items alike: the leakage of each [mA], how many, its nature and its line.

    Three-phase equipment is given what it leaks at worst, which is with a line missing.
    """

    each: float
    count: int
    nature: str
    line: str

    @property
    def total(self) -> float:
        """The leakage of all of them on one line [mA]."""
        return self.each * self.count

    @property
    def arcs(self) -> tuple[tuple[int, int], ...]:
        """The angles [degrees], from and to, between which the leakage of one may point."""
        if self.line == Line.THREE_PHASE:
            return ANY_ANGLE
        first, last = NATURE_ANGLES[self.nature]
        known = LINE_ANGLES.get(self.line)
        angles = LINE_ANGLES.values() if known is None else (known,)
        return tuple((angle + first, angle + last) for angle in angles)

    @property
    def has_one_angle(self) -> bool:
        """Whether line and nature are known."""
        ((first, last), *others) = self.arcs
        return first == last and not others


def greatest(parts: Sequence[Part]) -> float:
    """Return the greatest sum [mA] over all lines and natures that may be, and all that is on."""
    return max((_greatest_within(parts, start) for start in range(0, 360, PIECE)), default=0.0)


def _greatest_within(parts: Sequence[Part], start: int) -> float:
    """Return the farthest reach of all parts into a direction of one piece of the circle.

    A part that can point there counts in full; another by what it has in that direction.
    """
    full, across, along = 0.0, 0.0, 0.0
    for part in parts:
        nearest, away = _nearest(part, start + PIECE / 2.0)
        if not away:
            full += part.total
        elif away < QUARTER:
            across += part.total * cos(radians(nearest))
            along += part.total * sin(radians(nearest))
    return full + _peak(across, along, start)


def _nearest(part: Part, direction: float) -> tuple[float, float]:
    """Return the angle nearest to a direction at which a part may point, and how far away."""
    ends = []
    for first, last in part.arcs:
        if (direction - first) % 360 <= last - first:
            return direction, 0.0
        ends += [first, last]
    away = [(abs((direction - end + 180) % 360 - 180), end) for end in ends]
    distance, end = min(away)
    return float(end), distance


def _peak(across: float, along: float, start: int) -> float:
    """Return the greatest part of a phasor [mA] in any direction of a piece of the circle."""
    angle = degrees(atan2(along, across))
    if (angle - start) % 360 <= PIECE:
        return hypot(across, along)
    ends = (radians(start), radians(start + PIECE))
    return max(across * cos(end) + along * sin(end) for end in ends)


def at_least(parts: Sequence[Part]) -> float:
    """Return a sum [mA] that some combination is sure to reach, whatever is not known.

    Assumption: items alike are of the same nature.
    The best of several bounds, each true for every line and nature that may be: one item alone;
    items alike on one line, or a third of them; items that are known in full; all on one line,
    at worst half capacitive and half resistive; a third of all of one nature, for one line has
    that much; and the mean reach of all parts into all directions, which some direction equals
    or exceeds.
    """
    on_lines = [one for one in parts if one.line != Line.THREE_PHASE]
    natures = (Nature.CAPACITIVE.value, Nature.RESISTIVE.value)
    bounds = (
        *(one.each for one in parts if one.count),
        *(one.total for one in on_lines if one.line in LINE_ANGLES),
        *(ceil(one.count / 3) * one.each for one in on_lines),
        greatest([one for one in parts if one.has_one_angle]),
        *(_at_least_on([one for one in parts if one.line == line]) for line in LINE_ANGLES),
        *(sum(one.total for one in on_lines if one.nature == kind) / 3 for kind in natures),
        sum(one.total for one in on_lines) / pi,
    )
    return max(bounds, default=0.0)


def _at_least_on(parts: Sequence[Part]) -> float:
    """Return the least sum [mA] of parts on one line; those of unknown nature help it to be low."""
    known = {
        nature.value: sum(one.total for one in parts if one.nature == nature) for nature in Nature
    }
    capacitive, resistive = known[Nature.CAPACITIVE], known[Nature.RESISTIVE]
    open_ = known[Nature.UNKNOWN]
    even = (capacitive + resistive + open_) / 2.0
    first = min(max(even, capacitive), capacitive + open_)
    return hypot(first, capacitive + resistive + open_ - first)


def all_on(parts: Sequence[Part]) -> float | None:
    """Return the sum [mA] with everything on and every line there, or None without the lines.

    Assumptions: what is of unknown nature leaks through filters; three-phase equipment is
    balanced and adds nothing.
    """
    if any(one.line == Line.UNKNOWN for one in parts):
        return None
    across = along = 0.0
    for one in parts:
        if one.line != Line.THREE_PHASE:
            angle = radians(LINE_ANGLES[one.line] + NATURE_ANGLES[one.nature][1])
            across += one.total * cos(angle)
            along += one.total * sin(angle)
    return hypot(across, along)


def may_cancel(parts: Sequence[Part]) -> bool:
    """Tell whether the leakage of some may cancel that of others while all are on."""
    lines = {one.line for one in parts}
    several = sum(one.count for one in parts) > 1
    return len(lines) > 1 or Line.THREE_PHASE in lines or (Line.UNKNOWN in lines and several)
