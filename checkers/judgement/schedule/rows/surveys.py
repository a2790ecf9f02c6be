"""Published surveys of devices in service, to set a schedule's failure rate beside."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "surveys.toml"


@dataclass(frozen=True, slots=True)
class Survey:
    """One survey: what it looked at, and which share of the devices was bad [0 to 1]."""

    says: str
    failed: float
    sample: int | None
    source: Citation


def load_surveys(raw: Mapping[str, Any], file: str = FILE) -> tuple[Survey, ...]:
    """Return the surveys of a parsed file; raises DataError where an entry is not whole."""
    return tuple(_survey(Record(file, key, entry)) for key, entry in raw.items())


def _survey(record: Record) -> Survey:
    failed, sample = record.number("failed"), record.number("sample")
    document, clause = record.choice("document", frozenset(SOURCES)), record.text("clause")
    evidence = record.choice("evidence", EVIDENCE_WORDS)
    if failed is None or not 0 < failed < 1:
        raise record.error("needs 'failed' as a share between 0 and 1")
    survey = Survey(
        says=record.text("says"),
        failed=failed,
        sample=None if sample is None else int(sample),
        source=cite(document, clause, evidence),
    )
    record.finish()
    return survey


SURVEYS = load_surveys(read_toml(data_folder() / FILE, FILE))
