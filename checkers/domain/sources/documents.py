"""The documents that numbers come from, and how far each number can be trusted."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

PRODUCT_STANDARD = "product-standard"
KINDS = frozenset(
    {
        PRODUCT_STANDARD,
        "installation-code",
        "instrument-standard",
        "guide",
        "trade",
        "statute",
        "science",
    }
)


class Evidence(StrEnum):
    """How a number is known."""

    READ = "read"
    SECONDARY = "secondary"
    DERIVED = "derived"
    COMMON_PRACTICE = "common-practice"
    MEMORY = "memory"

    @property
    def meaning(self) -> str:
        """The word, said so that a practitioner knows how far to trust the number."""
        return _MEANINGS[self]


_MEANINGS = {
    Evidence.READ: "seen in a published text",
    Evidence.SECONDARY: "another published text quotes it",
    Evidence.DERIVED: "calculated from the figures named",
    Evidence.COMMON_PRACTICE: "a fact of the trade, with no published source",
    Evidence.MEMORY: "not confirmed: check your own copy",
}

EVIDENCE_WORDS = frozenset(Evidence)


@dataclass(frozen=True, slots=True)
class Citation:
    """Where a number stands: document, edition, clause, and how it is known."""

    document: str
    edition: str
    clause: str
    evidence: str

    @property
    def words(self) -> str:
        """The citation as one line a person reads."""
        place = ", ".join(part for part in (self.document, self.edition, self.clause) if part)
        return f"{place} ({Evidence(self.evidence).meaning})"


@dataclass(frozen=True, slots=True)
class Source:
    """One document: what it is called, who publishes it, and in which editions."""

    key: str
    designation: str
    title: str
    publisher: str
    kind: str
    edition: str
    year: int | None
    replaces: str
    names: tuple[str, ...]
    builds_on: tuple[str, ...]
    evidence: str
    note: str


def _source(key: str, record: Record) -> Source:
    """Return one entry of sources.toml."""
    year = record.number("year")
    source = Source(
        key=key,
        designation=record.text("designation"),
        title=record.text("title"),
        publisher=record.text("publisher"),
        kind=record.choice("kind", KINDS),
        edition=record.text("edition", default=""),
        year=None if year is None else int(year),
        replaces=record.text("replaces", default=""),
        names=record.texts("names"),
        builds_on=record.texts("builds_on"),
        evidence=record.choice("evidence", EVIDENCE_WORDS),
        note=record.text("note", default=""),
    )
    record.finish()
    return source


def load_sources(text: Mapping[str, object], file: str) -> dict[str, Source]:
    """Return every document of a parsed sources file, by key.

    Raises DataError where an entry is not whole, or two documents share a name.
    """
    sources = {key: _source(key, Record(file, key, value)) for key, value in text.items()}
    _names(sources, file)
    for source in sources.values():
        for key in source.builds_on:
            if key not in sources:
                raise Record(file, source.key, {}).error(f"builds on unknown source {key!r}")
    return sources


def _squeezed(name: str) -> str:
    """Return a designation without case, spaces, dashes and slashes, to compare with."""
    return re.sub(r"[^a-z0-9.]", "", name.casefold().replace("–", "-"))


def _names(sources: Mapping[str, Source], file: str) -> dict[str, str]:
    """Return every squeezed name of every document with the document's key.

    Raises DataError where two documents share a name.
    """
    names: dict[str, str] = {}
    for source in sources.values():
        for name in {_squeezed(one) for one in (source.key, source.designation, *source.names)}:
            if names.setdefault(name, source.key) != source.key:
                raise Record(file, source.key, {}).error(
                    f"is called {name!r}, and so is {names[name]!r}"
                )
    return names


SOURCES: Mapping[str, Source] = MappingProxyType(
    load_sources(read_toml(data_folder() / "sources.toml", "sources.toml"), "sources.toml")
)
_NAMES = _names(SOURCES, "sources.toml")
_EDITION = re.compile(r"\s*(:\s*\d{4}.*|\(\s*\d{4}\s*\)|\+\s*A\d.*)$", re.IGNORECASE)


def recognise(name: str) -> str | None:
    """Return the key of the product standard a person means, or None.

    "BS EN 61008-1:2012+A12" and "iec 61008" are both the document "iec-61008-1". The
    edition is dropped: it says which printing, not which kind of device.
    """
    key = _NAMES.get(_squeezed(name)) or _NAMES.get(_squeezed(_EDITION.sub("", name)))
    return key if key and SOURCES[key].kind == PRODUCT_STANDARD else None


def cite(document: str, clause: str, evidence: str, edition: str = "") -> Citation:
    """Return the citation of a clause of a known document."""
    source = SOURCES[document]
    return Citation(source.designation, edition or source.edition, clause, str(evidence))
