"""The converter circuits of data/circuits.toml: nodes, valves and where a fault may be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from checkers.domain.quantities.quantity import parse_quantity
from checkers.domain.quantities.typed_numbers import NotAQuantity
from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "circuits.toml"
EARTH = "earth"
OUTPUT_NODE = "out"
PLACES = {
    "output": "the output",
    "dc-pole": "a DC pole",
    "other-dc-pole": "the other DC pole",
}

Pair = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Parts:
    """What every circuit is made of: valve drop [V], resistances [ohm], ratios to the mains."""

    valve_drop: float
    valve_resistance: float
    line_resistance: float
    source_inductance: float
    steps_per_cycle: int
    motor_ratio: float
    carrier_ratio: int
    modulation: float


@dataclass(frozen=True, slots=True)
class Bounds:
    """Where one waveform class ends: resistance [ohm], currents [mA], angle [degree], shares."""

    reference_fault: float
    low_current: float
    low_interval: float
    smooth_ripple: float
    composite_dc: float
    trip_current: float
    lowest_frequency: float
    highest_frequency: float
    direct_share: float
    switching_from: float
    switching_share: float
    between_share: float
    mains_share: float
    composite_mains_share: float
    composite_switching: float


@dataclass(frozen=True, slots=True)
class Circuit:
    """One converter circuit as nodes and the valves between them.

    Each valve is (anode, cathode); the first `fired` of them are thyristors. `smoothing` [µF],
    `link_load` [ohm] and `delay_angle` [degree] are what the circuit has if nothing is asked.
    `boost` is a regulated link: its two nodes, and its voltage in line-to-line peaks.
    """

    key: str
    name: str
    what: str
    lines: int
    valves: tuple[Pair, ...]
    fired: int
    link: Pair | None
    smoothing: float
    load: Pair
    link_load: float
    delay_angle: float
    burst: tuple[int, int] | None
    boost: tuple[Pair, float] | None
    inverter: Pair | None
    cycles: int
    places: Mapping[str, str]

    @property
    def first_place(self) -> str:
        """Where the fault is taken to be if nothing is asked."""
        return next(iter(self.places))

    def cycles_at(self, place: str) -> int:
        """Mains cycles after which the current of a fault at a place repeats itself."""
        steady_pole = self.inverter is not None and place != "output"
        return 1 if steady_pole else self.cycles


@dataclass(frozen=True, slots=True)
class CircuitBook:
    """Everything in the file: common parts, class bounds, and the circuits by key."""

    parts: Parts
    bounds: Bounds
    sources: Mapping[str, Citation]
    circuits: Mapping[str, Circuit]


def load_circuits(raw: dict[str, object], file: str = FILE) -> CircuitBook:
    """Return everything of a parsed file; raises DataError naming file and row."""
    top = Record(file, "", raw)
    table = top.value("circuit") or {}
    book = CircuitBook(
        parts=_parts(top.record("parts") or Record(file, "parts", {})),
        bounds=_bounds(top.record("classes") or Record(file, "classes", {})),
        sources=MappingProxyType(
            {
                key: _source(Record(file, key, one))
                for key, one in (top.value("source") or {}).items()
            }
        ),
        circuits=MappingProxyType(
            {key: _circuit(Record(file, key, one), key) for key, one in table.items()}
        ),
    )
    top.finish()
    return book


def _source(record: Record) -> Citation:
    cited = cite(
        record.choice("document", frozenset(SOURCES)),
        record.text("clause"),
        record.choice("evidence", EVIDENCE_WORDS),
        record.text("edition"),
    )
    record.finish()
    return cited


def _bounds(record: Record) -> Bounds:
    bounds = Bounds(
        reference_fault=_amount(record, "reference_fault", "fault_resistance"),
        low_current=_amount(record, "low_current", "dc_residual"),
        low_interval=_amount(record, "low_interval", "low_interval"),
        composite_dc=_amount(record, "composite_dc", "dc_residual"),
        trip_current=_amount(record, "trip_current", "rated_residual_current"),
        smooth_ripple=_share(record, "smooth_ripple"),
        lowest_frequency=_amount(record, "lowest_frequency", "frequency"),
        highest_frequency=_amount(record, "highest_frequency", "frequency"),
        direct_share=_share(record, "direct_share"),
        switching_from=record.number("switching_from") or 0.0,
        switching_share=_share(record, "switching_share"),
        between_share=_share(record, "between_share"),
        mains_share=_share(record, "mains_share"),
        composite_mains_share=_share(record, "composite_mains_share"),
        composite_switching=record.amount("composite_switching", "frequency") or 0.0,
    )
    record.finish()
    return bounds


def _share(record: Record, key: str) -> float:
    value = record.number(key)
    if value is None or not 0.0 < value < 1.0:
        raise record.error(f"{key!r} must be a share between 0 and 1")
    return value


def _parts(record: Record) -> Parts:
    parts = Parts(
        valve_drop=_amount(record, "valve_drop", "valve_drop"),
        valve_resistance=_amount(record, "valve_resistance", "part_resistance"),
        line_resistance=_amount(record, "line_resistance", "part_resistance"),
        source_inductance=_amount(record, "source_inductance", "source_inductance"),
        steps_per_cycle=int(record.number("steps_per_cycle") or 0),
        motor_ratio=record.number("motor_ratio") or 0.0,
        carrier_ratio=int(record.number("carrier_ratio") or 0),
        modulation=record.number("modulation") or 0.0,
    )
    record.finish()
    if parts.carrier_ratio == 0 or parts.steps_per_cycle % parts.carrier_ratio:
        raise record.error("steps_per_cycle must be a whole number of carrier periods")
    return parts


def _circuit(record: Record, key: str) -> Circuit:
    valves = _pairs(record, "valves")
    link = _pair(record, "link")
    circuit = Circuit(
        key=key,
        name=record.text("name"),
        what=record.text("what"),
        lines=int(record.number("lines") or 0),
        valves=valves,
        fired=_fired(record, valves),
        link=link,
        smoothing=_amount(record, "smoothing", "smoothing", "0 µF"),
        load=_pair(record, "load") or link or (EARTH, EARTH),
        link_load=_amount(record, "link_load", "link_load", "100 kohm"),
        delay_angle=_amount(record, "delay_angle", "delay_angle", "0 degree"),
        burst=_burst(record),
        boost=_boost(record),
        inverter=_pair(record, "inverter"),
        cycles=int(record.number("cycles") or 1),
        places=MappingProxyType(_places(record)),
    )
    record.finish()
    _refuse_unknown_nodes(record, circuit)
    return circuit


def _amount(record: Record, key: str, quantity: str, default: str | None = None) -> float:
    """Return a value of a record [unit its kind is computed in]."""
    try:
        return parse_quantity(record.text(key, default), quantity)
    except NotAQuantity as bad:
        raise record.error(f"{key!r}: {bad}") from bad


def _fired(record: Record, valves: tuple[Pair, ...]) -> int:
    if record.flag("fired", default=False):
        return len(valves)
    return int(record.number("fired_valves") or 0)


def _pair(record: Record, key: str) -> Pair | None:
    value = record.texts(key)
    if value and len(value) != 2:
        raise record.error(f"{key!r} needs two nodes")
    return (value[0], value[1]) if value else None


def _pairs(record: Record, key: str) -> tuple[Pair, ...]:
    value = record.value(key) or []
    if not all(isinstance(one, list) and len(one) == 2 for one in value):
        raise record.error(f"{key!r} needs pairs of nodes")
    return tuple((one[0], one[1]) for one in value)


def _burst(record: Record) -> tuple[int, int] | None:
    value = record.value("burst")
    return None if value is None else (int(value[0]), int(value[1]))


def _boost(record: Record) -> tuple[Pair, float] | None:
    inner = record.record("boost")
    if inner is None:
        return None
    nodes, ratio = _pair(inner, "nodes"), inner.number("ratio")
    inner.finish()
    if nodes is None or ratio is None:
        raise inner.error("needs nodes and ratio")
    return nodes, ratio


def _places(record: Record) -> dict[str, str]:
    value = record.value("places")
    if not value or not set(value) <= set(PLACES):
        raise record.error(f"'places' needs one or more of {', '.join(PLACES)}")
    return dict(value)


def _refuse_unknown_nodes(record: Record, circuit: Circuit) -> None:
    if circuit.lines not in {1, 2, 3} or circuit.load == (EARTH, EARTH):
        raise record.error("needs one to three lines, and a link or a load")
    known = {EARTH} | {f"line{number}" for number in range(1, circuit.lines + 1)}
    known |= {node for pair in circuit.valves for node in pair}
    known |= set(circuit.boost[0]) if circuit.boost else set()
    known |= {OUTPUT_NODE} if circuit.inverter else set()
    used = {*circuit.load, *(circuit.inverter or ()), *circuit.places.values()}
    if used - known:
        raise record.error(f"names nodes that nothing makes: {', '.join(sorted(used - known))}")


BOOK = load_circuits(read_toml(data_folder() / FILE, FILE))
PARTS, BOUNDS, CIRCUITS = BOOK.parts, BOOK.bounds, BOOK.circuits
