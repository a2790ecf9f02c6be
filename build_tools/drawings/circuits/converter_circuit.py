"""A converter circuit as its table of valves gives it, with the device's core and the fault."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.drawings.circuits.parts import (
    capacitor,
    core,
    diode,
    earth,
    fault,
    joint,
    motor,
    part,
)
from build_tools.drawings.svg import Picture, Point, label, line, path
from checkers.physics.converter.circuits import CIRCUITS, EARTH, PLACES, Circuit

TOP, BOTTOM = 34.0, 196.0  # where the rails of the DC link lie
LINES_FROM, LINES_TO = 88.0, 142.0
LEFT, CORE_AT, FIRST_COLUMN, COLUMN = 26.0, 62.0, 112.0, 34.0
LINK_AT, LOAD_AT, MOTOR_AT = 226.0, 266.0, 330.0
BETWEEN_PAIR = 13.0  # from a column to each of two valves side by side


def converter_circuit(circuit: str, place: str = "") -> Picture:
    """Draw a circuit of circuits.toml with the fault in its usual place, or in another."""
    drawn = CIRCUITS[circuit]
    at = place or drawn.first_place
    return Picture(
        key=f"circuit-{circuit}{'-' + place if place else ''}",
        title=f"{drawn.name}: circuit",
        describes=f"{drawn.what} The earth fault is on {PLACES[at]}. All supply conductors pass "
        "through the core of the RCD; the neutral is earthed at the source.",
        height=(BOTTOM if "minus" in _heights(drawn) else LINES_TO) + 36.0,
        parts=(
            *_supply(drawn),
            *_valves(drawn),
            *_rails(drawn),
            *_link(drawn),
            *_load(drawn),
            fault(_fault_at(drawn, at), named_below=_at_the_motor(drawn, at)),
        ),
    )


def conductors(circuit: Circuit) -> list[str]:
    """Return the supply conductors of a circuit: its lines, and the neutral where it is used."""
    lines = [f"line{one}" for one in range(1, circuit.lines + 1)]
    nodes = {node for pair in circuit.valves for node in pair} | set(circuit.link or circuit.load)
    return [*lines, EARTH] if EARTH in nodes | set(circuit.load) else lines


def _heights(circuit: Circuit) -> dict[str, float]:
    """Return how high each node lies."""
    named = conductors(circuit)
    step = (LINES_TO - LINES_FROM) / max(len(named) - 1, 1)
    heights = {node: LINES_FROM + place * step for place, node in enumerate(named)}
    rails = {node for pair in circuit.valves for node in pair} - set(heights)
    raised = circuit.boost[0] if circuit.boost else ()
    for node in rails | set(raised):
        heights.setdefault(node, BOTTOM if node == "minus" else TOP)
    return heights


def _supply(circuit: Circuit) -> Iterator[str]:
    named, heights = conductors(circuit), _heights(circuit)
    for node in named:
        y = heights[node]
        words = "N" if node == EARTH else f"L{node[-1]}" if circuit.lines > 1 else "L"
        yield line((LEFT, y), (_reach(circuit, node), y), "picture__wire")
        yield label((LEFT - 6.0, y + 4.5), words, anchor="end", kind="picture__text--strong")
        if node == EARTH:
            yield line((LEFT + 12.0, y), (LEFT + 12.0, y + 24.0), "picture__wire")
            yield earth((LEFT + 12.0, y + 24.0))
    ends = [heights[node] for node in named]
    yield core((CORE_AT, (ends[0] + ends[-1]) / 2.0), (ends[-1] - ends[0]) / 2.0 + 13.0)
    yield label((CORE_AT, ends[0] - 20.0), "RCD", anchor="middle", kind="picture__text--strong")


def _reach(circuit: Circuit, node: str) -> float:
    """Return how far to the right a supply conductor reaches."""
    columns = _columns(circuit)
    used_at_load = node in (circuit.link or circuit.load)
    last = max((x for (owner, _), x in columns.items() if owner == node), default=FIRST_COLUMN)
    return LOAD_AT if used_at_load else last


def _columns(circuit: Circuit) -> dict[tuple[str, str], float]:
    """Return where each pair of a supply conductor and a rail has its valves."""
    named = conductors(circuit)
    owners = [owner for owner in named if any(owner in pair for pair in circuit.valves)]
    places = {owner: FIRST_COLUMN + place * COLUMN for place, owner in enumerate(owners)}
    return {
        (owner, rail): places[owner]
        for pair in circuit.valves
        for owner, rail in (pair, pair[::-1])
        if owner in places and rail not in named
    }


def _valves(circuit: Circuit) -> Iterator[str]:
    heights = _heights(circuit)
    for (owner, rail), x in _columns(circuit).items():
        middle = (TOP + LINES_FROM) / 2.0 if rail != "minus" else (BOTTOM + LINES_TO) / 2.0
        fired = [
            (place < circuit.fired, pair[1] == rail)
            for place, pair in enumerate(circuit.valves)
            if set(pair) == {owner, rail}
        ]
        yield joint((x, heights[owner]))
        yield _column(x, heights[owner], heights[rail], middle, side_by_side=len(fired) > 1)
        for place, (is_fired, towards_rail) in enumerate(fired):
            shift = BETWEEN_PAIR * (2 * place - 1) if len(fired) > 1 else 0.0
            upward = towards_rail == (rail != "minus")
            yield diode((x + shift, middle), upward=upward, fired=is_fired)


def _column(x: float, owner: float, rail: float, middle: float, *, side_by_side: bool) -> str:
    """Return the wire of a column, parted in two where two valves stand side by side."""
    if not side_by_side:
        return line((x, owner), (x, rail), "picture__wire")
    ring = [
        (x + side * BETWEEN_PAIR, middle + end * 16.0)
        for side, end in ((-1, -1), (1, -1), (1, 1), (-1, 1))
    ]
    lower, upper = max(owner, rail), min(owner, rail)
    return (
        line((x, upper), (x, middle - 16.0), "picture__wire")
        + line((x, middle + 16.0), (x, lower), "picture__wire")
        + path(ring, "picture__wire", closed=True)
    )


def _rails(circuit: Circuit) -> Iterator[str]:
    heights, columns = _heights(circuit), _columns(circuit)
    for rail in dict.fromkeys(rail for _, rail in columns):
        start = min(x for (_, one), x in columns.items() if one == rail)
        y = heights[rail]
        yield line((start, y), (LOAD_AT, y), "picture__wire")
        if rail in ("plus", "minus"):
            words = "+" if rail == "plus" else "−"
            yield label((start - 12.0, y + 5.0), words, kind="picture__text--strong")


def _link(circuit: Circuit) -> Iterator[str]:
    heights = _heights(circuit)
    if circuit.boost is not None:
        yield part((LINK_AT - 50.0, TOP - 12.0), 44.0, 24.0, "boost")
    nodes = circuit.boost[0] if circuit.boost else circuit.link
    if nodes and (circuit.smoothing or circuit.boost):
        ends = sorted(heights[node] for node in nodes)
        yield capacitor((LINK_AT, ends[0]), (LINK_AT, ends[1]))


def _load(circuit: Circuit) -> Iterator[str]:
    heights = _heights(circuit)
    if circuit.inverter is None:
        ends = sorted(heights[node] for node in circuit.load)
        middle = (ends[0] + ends[1]) / 2.0
        yield line((LOAD_AT, ends[0]), (LOAD_AT, ends[1]), "picture__wire")
        yield part((LOAD_AT - 9.0, middle - 20.0), 18.0, 40.0, "")
        yield label((LOAD_AT + 14.0, middle + 20.0), "load")
        return
    middle = (TOP + BOTTOM) / 2.0
    yield line((LOAD_AT, TOP), (LOAD_AT, BOTTOM), "picture__wire")
    yield part((LOAD_AT - 22.0, middle - 26.0), 44.0, 52.0, "= / ~")
    yield line((LOAD_AT + 22.0, middle), (MOTOR_AT - 16.0, middle), "picture__wire")
    yield motor((MOTOR_AT, middle))


def _at_the_motor(circuit: Circuit, place: str) -> bool:
    return place == "output" and circuit.inverter is not None


def _fault_at(circuit: Circuit, place: str) -> Point:
    if _at_the_motor(circuit, place):
        return LOAD_AT + 32.0, (TOP + BOTTOM) / 2.0
    return LOAD_AT, _heights(circuit)[circuit.places[place]]
