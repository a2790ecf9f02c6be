"""What is assumed of cores, relays and buttons, read strictly from data/core.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from math import sqrt
from types import MappingProxyType
from typing import Any

from checkers.domain.device.device import DeviceType, Form
from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record
from checkers.physics.core.sensing_core import Core, Relay

FILE = "core.toml"


class Scatter(StrEnum):
    """Where a core stands in the spread of devices of its type."""

    TYPICAL = "typical"
    LEAST_HARMED = "least-harmed"
    MOST_HARMED = "most-harmed"


@dataclass(frozen=True, slots=True)
class CoreData:
    """A core of a type, before it is scaled to a device; `knee_at_least` [mA r.m.s. × √2].

    Where `just_bears` [mA] is above zero, the knee is the least that passes the type test with
    that smooth DC. `beyond` is by how much more than this others may be harmed.
    """

    knee: float
    knee_at_least: float
    just_bears: float
    beyond: float
    coercive: float
    burden: float
    relay: Relay
    evidence: str
    note: str

    def scaled(self, own_trip_current: float, rated: float | None = None) -> Core:
        """Return the core of a device with this own trip current [mA r.m.s.].

        The rating [mA] counts for a core that only just passes the type test; without it, the
        own trip current may be as little as half of it.
        """
        least = self.knee_at_least / (sqrt(2.0) * own_trip_current)
        if self.just_bears:
            widest = own_trip_current / CORE.own_trip_current.values["least"]
            least = CORE.type_test.least_knee(own_trip_current, self.just_bears, rated or widest)
        return Core(round(max(self.knee, least), 4), self.coercive, self.burden, self.relay)

    def harmed(self, own: float, trip: float) -> float:
        """Return a trip current [own's unit] with what others may be harmed beyond this core."""
        return trip + self.beyond * max(0.0, trip - own)


@dataclass(frozen=True, slots=True)
class TypeTest:
    """The least knee that passes the type test on half waves, as a law of rating and DC."""

    knee_of_own: float
    knee_of_dc: float
    small_rating: float
    small_share: float
    citation: Citation
    note: str

    def least_knee(self, own: float, dc: float, rated: float) -> float:
        """Return it in peaks of the own trip current, from three currents [mA]."""
        share = self.small_share if rated <= self.small_rating else 1.0
        return share * (self.knee_of_own * own + self.knee_of_dc * dc) / rated


@dataclass(frozen=True, slots=True)
class Shares:
    """Figures as shares of the rated residual current, with where they stand."""

    values: Mapping[str, float]
    citation: Citation
    note: str

    def of(self, name: str, rated: float) -> float:
        """Return one figure [mA] for a rated residual current [mA]."""
        return self.values[name] * rated


@dataclass(frozen=True, slots=True)
class BenchPoint:
    """A trip current seen on the bench [mA r.m.s.], with the smooth DC that flowed [mA]."""

    type: str
    rated_residual_current: float
    own_trip_current: float
    dc_residual: float
    trip_current: float
    citation: Citation


@dataclass(frozen=True, slots=True)
class Parameter:
    """What one figure of a core is called, and what it means."""

    name: str
    meaning: str


@dataclass(frozen=True, slots=True)
class CoreFile:
    """Everything core.toml says."""

    forms: frozenset[str]
    parameters: Mapping[str, Parameter]
    cores: Mapping[tuple[str, Scatter], CoreData]
    type_test: TypeTest
    own_trip_current: Shares
    button: Shares
    bench_points: tuple[BenchPoint, ...]
    in_print: str
    in_print_citation: Citation


def load_core_file(text: Mapping[str, Any], file: str) -> CoreFile:
    """Return the parsed file; raises DataError where something is missing or unknown."""
    top = Record(file, "", dict(text))
    said, citation = _in_print(top)
    loaded = CoreFile(
        forms=_forms(top),
        parameters=_parameters(top),
        cores=MappingProxyType(dict(_cores(top))),
        type_test=_type_test(top),
        own_trip_current=_shares(top, "own_trip_current", ("typical", "least", "most")),
        button=_shares(top, "button", ("greatest", "usual")),
        bench_points=tuple(_bench_point(one) for one in top.records("bench_point")),
        in_print=said,
        in_print_citation=citation,
    )
    top.finish()
    return loaded


def _needed(record: Record, key: str) -> Record:
    """Return a table that has to be there."""
    found = record.record(key)
    if found is None:
        raise record.error(f"needs a table [{key}]")
    return found


def _forms(top: Record) -> frozenset[str]:
    record = _needed(top, "model")
    forms = record.choices("forms", frozenset(Form)) or frozenset()
    record.finish()
    return forms


def _parameters(top: Record) -> Mapping[str, Parameter]:
    record = _needed(top, "parameter")
    found = {}
    for key in record.values:
        entry = _needed(record, key)
        found[key] = Parameter(entry.text("name"), entry.text("meaning"))
        entry.finish()
    return MappingProxyType(found)


def _cores(top: Record) -> list[tuple[tuple[str, Scatter], CoreData]]:
    found = []
    for record in top.records("core"):
        types = record.choices("types", frozenset(DeviceType)) or frozenset()
        scatter = Scatter(record.choice("scatter", frozenset(Scatter)))
        data = CoreData(
            knee=_positive(record, "knee"),
            knee_at_least=record.amount("knee_at_least", "current") or 0.0,
            just_bears=record.amount("just_bears", "current") or 0.0,
            beyond=record.number("beyond") or 0.0,
            coercive=_positive(record, "coercive"),
            burden=_positive(record, "burden"),
            relay=Relay(record.choice("relay", frozenset(Relay))),
            evidence=record.choice("evidence", EVIDENCE_WORDS),
            note=record.text("note"),
        )
        record.finish()
        found += [((one, scatter), data) for one in types]
    return found


def _positive(record: Record, key: str) -> float:
    value = record.number(key)
    if not value:
        raise record.error(f"needs {key!r} above zero")
    return value


def _type_test(top: Record) -> TypeTest:
    record = _needed(top, "type_test")
    test = TypeTest(
        knee_of_own=_positive(record, "knee_of_own"),
        knee_of_dc=_positive(record, "knee_of_dc"),
        small_rating=_current(record, "small_rating"),
        small_share=_positive(record, "small_share"),
        citation=_citation(record),
        note=record.text("note"),
    )
    record.finish()
    return test


def _shares(top: Record, key: str, names: tuple[str, ...]) -> Shares:
    record = _needed(top, key)
    values = {name: _positive(record, f"{name}_of_rated") for name in names}
    shares = Shares(MappingProxyType(values), _citation(record), record.text("note"))
    record.finish()
    return shares


def _current(record: Record, key: str) -> float:
    value = record.amount(key, "current")
    if value is None:
        raise record.error(f"needs {key!r}")
    return value


def _bench_point(record: Record) -> BenchPoint:
    point = BenchPoint(
        type=record.choice("type", frozenset(DeviceType)),
        rated_residual_current=_current(record, "rated_residual_current"),
        own_trip_current=_current(record, "own_trip_current"),
        dc_residual=_current(record, "dc_residual"),
        trip_current=_current(record, "trip_current"),
        citation=_citation(record),
    )
    record.finish()
    return point


def _in_print(top: Record) -> tuple[str, Citation]:
    record = _needed(top, "in_print")
    said, citation = record.text("says"), _citation(record)
    record.finish()
    return said, citation


def _citation(record: Record) -> Citation:
    document = record.choice("document", frozenset(SOURCES))
    evidence = record.choice("evidence", EVIDENCE_WORDS)
    return cite(document, record.text("clause", ""), evidence)


CORE = load_core_file(read_toml(data_folder() / FILE, FILE), FILE)
