"""The book of words: for each code of a room its sentence, what to do next, and its sources.

What several findings ask for next is a part, which each of them names as its remedy.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FOLDER = "words"
SUFFIX = ".toml"


class Cites(StrEnum):
    """Whether findings of a code name sources."""

    ALWAYS = "always"
    SOMETIMES = "sometimes"
    NEVER = "never"


@dataclass(frozen=True, slots=True)
class Words:
    """What a code says: templates whose {names} stand for facts.

    `about` is empty where what is judged names itself, such as a reading.
    """

    says: str
    about: str
    do_next: str
    cites: Cites


@dataclass(frozen=True, slots=True)
class Room:
    """The words of one subject: its findings, the parts they add, and remedies they share."""

    findings: Mapping[str, Words]
    parts: Mapping[str, str]


def rooms() -> Iterator[str]:
    """Yield the names of all rooms, which begin the codes of their findings."""
    for path in (data_folder() / FOLDER).iterdir():
        yield path.name.removesuffix(SUFFIX)


@cache
def room(name: str) -> Room:
    """Return the words of a room; raises DataError where its file is not whole."""
    file = f"{FOLDER}/{name}{SUFFIX}"
    return load_room(read_toml(data_folder() / FOLDER / f"{name}{SUFFIX}", file), file)


def load_room(text: Mapping[str, object], file: str) -> Room:
    """Return the words of a parsed file; raises DataError where it is not whole."""
    top = Record(file, "", dict(text))
    findings, parts = top.record("finding"), top.record("part")
    top.finish()
    shared = {code: parts.text(code) for code in parts.values} if parts else {}
    found = {code: _words(findings, code, shared) for code in findings.values} if findings else {}
    return Room(found, shared)


def _words(findings: Record, code: str, shared: Mapping[str, str]) -> Words:
    record = findings.record(code)
    if record is None:
        raise findings.error(f"needs a table [finding.{code}]")
    remedy = record.choice("remedy", frozenset(shared), "")
    words = Words(
        record.text("says"),
        record.text("about", ""),
        shared[remedy] if remedy else record.text("do_next", ""),
        Cites(record.choice("cites", frozenset(Cites))),
    )
    record.finish()
    return words


def words_of(code: str) -> Words:
    """Return the words of a finding's code, such as reading.too-quick; raises KeyError."""
    name, _, rest = code.partition(".")
    return room(name).findings[rest]


def part(code: str, /, **facts: object) -> str:
    """Return a part of a sentence, or a remedy that several findings share; raises KeyError."""
    name, _, rest = code.partition(".")
    return room(name).parts[rest].format_map(facts)
