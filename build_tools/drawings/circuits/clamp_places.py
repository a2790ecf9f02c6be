"""Where to put a clamp: what each place shows."""

from __future__ import annotations

from build_tools.drawings.circuits.parts import core, earth, part
from build_tools.drawings.svg import Picture, Point, label, labels, line

LINE_AT, NEUTRAL_AT, EARTH_AT = 66.0, 100.0, 134.0
LEFT, RIGHT = 34.0, 268.0
PLACES = (
    (
        "1",
        92.0,
        (LINE_AT, NEUTRAL_AT),
        ("All live conductors together, without the PE:", "the residual current."),
    ),
    (
        "2",
        160.0,
        (EARTH_AT, EARTH_AT),
        (
            "The PE alone: what returns by it. Other paths",
            "to earth take their share past this clamp.",
        ),
    ),
    (
        "3",
        222.0,
        (LINE_AT, LINE_AT),
        ("One live conductor: the load current.", "It says nothing of the residual current."),
    ),
)


def clamp_places() -> Picture:
    """Draw a circuit with three places for a clamp, and say what each shows."""
    return Picture(
        key="clamp-places",
        title="Where to clamp",
        describes=" ".join(f"Place {place[0]}: {' '.join(place[3])}" for place in PLACES),
        height=316.0,
        parts=(
            *_wires(),
            part((14.0, 48.0), 44.0, 70.0, "RCD"),
            part((RIGHT, 48.0), 70.0, 104.0, "loads"),
            *(_ring(number, x, ends) for number, x, ends, _ in PLACES),
            *_legend(),
        ),
        caption="1 with a DC-reading clamp shows smooth DC, with a leakage clamp the AC. Loads on "
        "for smooth DC: it flows only while they run. Keep the clamp away from other conductors.",
    )


def _wires() -> list[str]:
    wires = [
        ("L", LINE_AT, "picture__wire"),
        ("N", NEUTRAL_AT, "picture__wire"),
        ("PE", EARTH_AT, "picture__wire picture__wire--earth"),
    ]
    drawn = [line((LEFT, y), (RIGHT, y), kind) for _, y, kind in wires]
    drawn += [label((RIGHT - 4.0, y - 5.0), words, anchor="end") for words, y, _ in wires]
    return [
        *drawn,
        line((LEFT, EARTH_AT), (LEFT, EARTH_AT + 12.0), "picture__wire"),
        earth((LEFT, EARTH_AT + 12.0)),
    ]


def _ring(number: str, x: float, ends: tuple[float, float]) -> str:
    middle, half = sum(ends) / 2.0, (ends[1] - ends[0]) / 2.0 + 13.0
    named: Point = (x, middle - half - 6.0)
    return core((x, middle), half) + label(
        named, number, anchor="middle", kind="picture__text--large"
    )


def _legend() -> list[str]:
    drawn = []
    for place, (number, _, _, words) in enumerate(PLACES):
        y = 196.0 + 46.0 * place
        drawn.append(label((6.0, y), number, kind="picture__text--large"))
        drawn.append(labels((24.0, y), words))
    return drawn
