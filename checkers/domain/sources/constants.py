"""Single figures that stand in no table, each with its source, read from constants.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.glossary import UNITS
from checkers.domain.tables.records import Record

FILE = "constants.toml"


@dataclass(frozen=True, slots=True)
class Constant:
    """A figure in the unit its kind is computed in, what it means, and where it stands."""

    value: float
    says: str
    citation: Citation


def load_constants(text: Mapping[str, object], file: str) -> dict[str, Constant]:
    """Return every figure of a parsed file, by key.

    Raises DataError where one has no value, no meaning or no known source.
    """
    return {key: _figure(Record(file, key, entry)) for key, entry in text.items()}


def _figure(record: Record) -> Constant:
    value = _value(record)
    document = record.choice("document", frozenset(SOURCES))
    citation = cite(
        document,
        record.text("clause"),
        record.choice("evidence", EVIDENCE_WORDS),
        record.text("edition", default=""),
    )
    figure = Constant(value, record.text("says"), citation)
    record.finish()
    return figure


def _value(record: Record) -> float:
    written = record.value("value")
    if isinstance(written, str):
        unit = UNITS.get(written.partition(" ")[2])
        value = record.amount("value", unit.kind if unit else "a known kind")
    else:
        value = record.number("value")
    if value is None:
        raise record.error("has no value")
    return value


CONSTANTS: Mapping[str, Constant] = MappingProxyType(
    load_constants(read_toml(data_folder() / FILE, FILE), FILE)
)
