"""How much work each kind of change to an arrangement is, read from data/changes.toml."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from checkers.domain.sources.documents import EVIDENCE_WORDS
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "changes.toml"


def load_efforts(text: Mapping[str, object], file: str) -> dict[str, float]:
    """Return the effort of every kind of change of a parsed file, a bare figure, by its key.

    Raises DataError where an entry is not whole.
    """
    return {key: _effort(Record(file, key, entry)) for key, entry in text.items()}


def _effort(record: Record) -> float:
    effort = record.number("effort")
    record.text("says")
    record.choice("evidence", EVIDENCE_WORDS)
    record.finish()
    if not effort:
        raise record.error("needs an effort above nothing")
    return effort


EFFORTS: Mapping[str, float] = MappingProxyType(
    load_efforts(read_toml(data_folder() / FILE, FILE), FILE)
)
