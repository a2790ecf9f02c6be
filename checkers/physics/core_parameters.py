"""What is assumed of cores, relays and buttons, read strictly from data/core.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from math import sqrt
from types import MappingProxyType
from typing import Any

from checkers.domain.data_files import data_folder, read_toml
from checkers.domain.devices import DeviceType, Form
from checkers.domain.records import Record
from checkers.domain.sources import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.physics.sensing_core import Core, Relay

FILE = "core.toml"


class Scatter(StrEnum):
    """Where a core stands in the spread of devices of its type."""

    TYPICAL = "typical"
    LEAST_HARMED = "least-harmed"
    MOST_HARMED = "most-harmed"


@dataclass(frozen=True, slots=True)
class CoreData:
    """A core of a type, before it is scaled to a device; `knee_at_least` [mA r.m.s. × √2]."""

    knee: float
    knee_at_least: float
    coercive: float
    burden: float
    relay: Relay
    evidence: str
    note: str

    def scaled(self, own_trip_current: float) -> Core:
        """Return the core of a device with this own trip current [mA r.m.s.]."""
        least = self.knee_at_least / (sqrt(2.0) * own_trip_current)
        return Core(round(max(self.knee, least), 4), self.coercive, self.burden, self.relay)


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


def _shares(top: Record, key: str, names: tuple[str, ...]) -> Shares:
    record = _needed(top, key)
    values = {name: _positive(record, f"{name}_of_rated") for name in names}
    shares = Shares(MappingProxyType(values), _citation(record), record.text("note"))
    record.finish()
    return shares


def _bench_point(record: Record) -> BenchPoint:
    def current(key: str) -> float:
        value = record.amount(key, "current")
        if value is None:
            raise record.error(f"needs {key!r}")
        return value

    point = BenchPoint(
        type=record.choice("type", frozenset(DeviceType)),
        rated_residual_current=current("rated_residual_current"),
        own_trip_current=current("own_trip_current"),
        dc_residual=current("dc_residual"),
        trip_current=current("trip_current"),
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
