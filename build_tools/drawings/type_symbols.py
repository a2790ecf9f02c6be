"""The symbols that the device standards have printed on a device for its type and its delay."""

from __future__ import annotations

from math import cos, pi, sin

from build_tools.drawings.svg import Picture, Point, box, label, labels, line, path

SIDE, GAP = 40.0, 6.0
LEFT, WORDS_AT, FIRST, ROW = 6.0, 158.0, 8.0, 62.0
SIGNS: dict[str, tuple[str, ...]] = {
    "AC": ("sine",),
    "A": ("sine-and-pulses",),
    "F": ("sine-and-pulses", "mixed"),
    "B": ("sine-and-pulses", "mixed", "smooth"),
    "B+": ("sine-and-pulses", "kilohertz", "smooth"),
}
SEES = {
    "AC": ("alternating current", "only"),
    "A": ("and pulsating", "direct current"),
    "F": ("and mixed", "frequencies"),
    "B": ("and smooth direct", "current, to 1 kHz"),
    "B+": ("as B, and to 20 kHz",),
}
SNOWFLAKE = "snowflake"
SOURCE = (
    "The symbols are those of IEC 60755, IEC 61008-1, IEC 61009-1 and IEC 62423 (B+: DIN VDE "
    "0664-400), drawn here from memory: makers join or part the boxes differently"
)


def type_symbols(types: list[str] | None = None) -> Picture:
    """Draw the symbols of types, each with what it stands for.

    Inputs: the types in the order shown, all of them if left out.
    """
    shown = types or list(SIGNS)
    return Picture(
        key=f"symbols-{'-'.join(shown)}".replace("+", "plus"),
        title="Type symbols" if len(shown) > 1 else f"Symbol of type {shown[0]}",
        describes=" ".join(_sentence(one) for one in shown),
        height=FIRST + ROW * len(shown) - 8.0,
        parts=tuple(_row(one, FIRST + ROW * place) for place, one in enumerate(shown)),
        sources=(SOURCE,),
    )


def delay_marks() -> Picture:
    """Draw the marks for delay and cold that stand beside the type symbol."""
    rows = (
        ("S", ("selective: waits, so that", "a device below opens first")),
        ("G", ("short delay of about 10 ms,", "a mark of the trade")),
        (SNOWFLAKE, ("snowflake with −25: works in", "the cold, down to −25 °C")),
        ("T", ("the test button",)),
    )
    return Picture(
        key="delay-marks",
        title="Marks beside the type symbol",
        describes=" ".join(f"{mark}: {' '.join(words)}." for mark, words in rows),
        height=FIRST + ROW * len(rows) - 8.0,
        parts=tuple(_mark(mark, words, FIRST + ROW * n) for n, (mark, words) in enumerate(rows)),
        sources=(
            "IEC 61008-1 and IEC 61009-1; G: ÖVE/ÖNORM E 8601 (not confirmed: check your own copy)",
        ),
    )


def _row(type_: str, top: float) -> str:
    boxes = [
        box((LEFT + n * (SIDE + GAP), top), SIDE, SIDE, "picture__part", 2.0)
        + _sign(sign, (LEFT + n * (SIDE + GAP), top))
        for n, sign in enumerate(SIGNS[type_])
    ]
    named = label((WORDS_AT, top + 17.0), f"{type_}:", kind="picture__text--large")
    return "".join([*boxes, named, labels((WORDS_AT + 38.0, top + 16.0), SEES[type_])])


def _mark(mark: str, words: tuple[str, ...], top: float) -> str:
    x, y = LEFT + SIDE / 2.0, top + SIDE / 2.0
    shown = label((x, y + 6.0), mark, anchor="middle", kind="picture__text--large")
    return (
        box((LEFT, top), SIDE, SIDE, "picture__part", 2.0)
        + (_snowflake((x, y)) if mark == SNOWFLAKE else shown)
        + labels((LEFT + SIDE + 16.0, top + 16.0), words)
    )


def _snowflake(at: Point) -> str:
    x, y = at
    arms = [(13.0 * cos(pi * turn / 6.0), 13.0 * sin(pi * turn / 6.0)) for turn in (1, 3, 5)]
    return "".join(line((x - dx, y - dy), (x + dx, y + dy), "picture__wire") for dx, dy in arms)


def _sign(sign: str, corner: Point) -> str:
    x, y = corner
    if sign == "sine":
        return path(_wave((x, y + 20.0), 9.0, 1.0), "picture__wire")
    if sign == "sine-and-pulses":
        return path(_wave((x, y + 12.0), 6.0, 1.0), "picture__wire") + path(
            _pulses((x, y + 33.0), 9.0), "picture__wire"
        )
    if sign == "mixed":
        return path(_wave((x, y + 20.0), 9.0, 4.0), "picture__wire")
    if sign == "kilohertz":
        return path(_wave((x, y + 14.0), 7.0, 4.0), "picture__wire") + label(
            (x + SIDE / 2.0, y + 35.0), "kHz", anchor="middle"
        )
    dashes = [(x + 8.0 + step * 9.0, x + 13.0 + step * 9.0) for step in range(3)]
    return line((x + 7.0, y + 16.0), (x + SIDE - 7.0, y + 16.0), "picture__wire") + "".join(
        line((start, y + 24.0), (end, y + 24.0), "picture__wire") for start, end in dashes
    )


def _wave(at: Point, height: float, periods: float) -> list[Point]:
    x, y = at
    steps = 48
    width = SIDE - 14.0
    return [
        (x + 7.0 + width * n / steps, y - height * sin(2.0 * pi * periods * n / steps))
        for n in range(steps + 1)
    ]


def _pulses(at: Point, height: float) -> list[Point]:
    x, y = at
    steps = 48
    width = SIDE - 14.0
    return [
        (x + 7.0 + width * n / steps, y - height * max(0.0, sin(4.0 * pi * n / steps)))
        for n in range(steps + 1)
    ]


def _sentence(type_: str) -> str:
    signs = {
        "sine": "a sine",
        "sine-and-pulses": "a sine above half waves on a line",
        "mixed": "a box with a faster sine",
        "kilohertz": "a box with a faster sine and kHz",
        "smooth": "a box with a line above a dashed line",
    }
    drawn = ", ".join(signs[sign] for sign in SIGNS[type_])
    return f"Type {type_}: {drawn}; it sees {' '.join(SEES[type_])}."
