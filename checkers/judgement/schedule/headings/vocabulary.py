"""The words of headings and cells by meaning, read from data/headings.toml."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from checkers.domain.sources.documents import recognise
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record
from checkers.judgement.schedule.headings.normal_form import plain

FILE = "headings.toml"


@dataclass(frozen=True, slots=True)
class Word:
    """What a phrase says: in which respect (column, test, waveform, decoration), and what.

    A weak word says nothing beside another; with an unsure one the meaning must be asked.
    """

    respect: str
    means: str
    weak: bool = False
    unsure: bool = False


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """All words: those of headings, and those of cells and descriptions by what they mean."""

    heading: Mapping[str, Word]
    names: Mapping[str, str]
    cell: Mapping[str, frozenset[str]]
    form: Mapping[str, str]
    delay: Mapping[str, str]
    form_of_standard: Mapping[str, str]
    any_form: frozenset[str]
    no_device: frozenset[str]
    month: Mapping[str, int]


def load_vocabulary(raw: Mapping[str, Any], file: str = FILE) -> Vocabulary:
    """Return the vocabulary of a parsed file.

    Raises DataError where a key is unknown, or a phrase means two things at once.
    """
    whole = Record(file, "", raw)
    sections = {name: _section(whole, name) for name in ("column", "test", "waveform", "cell")}
    forms, delays, months = (_section(whole, name) for name in ("form", "delay", "month"))
    heading: dict[str, Word] = {}
    for respect in ("column", "test", "waveform"):
        for means, record in sections[respect].items():
            _add(heading, record, respect, means)
    decoration, any_form, no_device = (
        _needed(whole, name) for name in ("decoration", "any_form", "no_device")
    )
    _add(heading, decoration, "decoration", "")
    names = {means: record.text("name") for means, record in sections["column"].items()}
    made = Vocabulary(
        heading=heading,
        names=names,
        cell={means: _words(record, "words") for means, record in sections["cell"].items()},
        form=_by_word(forms),
        delay=_by_word(delays),
        form_of_standard=_by_standard(forms),
        any_form=_words(any_form, "words"),
        no_device=_words(no_device, "words"),
        month={word: int(number) for word, number in _by_word(months).items()},
    )
    read = [
        record for part in (*sections.values(), forms, delays, months) for record in part.values()
    ]
    for record in (*read, decoration, no_device, whole):
        record.finish()
    return made


def _section(whole: Record, name: str) -> dict[str, Record]:
    tables = whole.tables(name)
    return {key: Record(whole.file, f"{name}.{key}", one.values) for key, one in tables.items()}


def _needed(whole: Record, name: str) -> Record:
    record = whole.record(name)
    if record is None:
        raise whole.error(f"needs a table {name!r}")
    return record


def _words(record: Record, key: str) -> frozenset[str]:
    return frozenset(plain(word) or word for word in record.texts(key))


def _add(heading: dict[str, Word], record: Record, respect: str, means: str) -> None:
    for key in ("words", "weak", "unsure"):
        for phrase in _words(record, key):
            if phrase in heading:
                raise record.error(f"{phrase!r} already means {heading[phrase].means!r}")
            heading[phrase] = Word(respect, means, key == "weak", key == "unsure")


def _by_word(records: Mapping[str, Record]) -> dict[str, str]:
    return {word: means for means, record in records.items() for word in _words(record, "words")}


def _by_standard(records: Mapping[str, Record]) -> dict[str, str]:
    found: dict[str, str] = {}
    for form, record in records.items():
        for document in record.texts("standards"):
            if recognise(document) != document:
                raise record.error(f"{document!r} is no known document")
            found[document] = form
    return found


VOCABULARY = load_vocabulary(read_toml(data_folder() / FILE, FILE))


@cache
def heading_phrases() -> re.Pattern[str]:
    """Return the pattern of any phrase of a heading, the longest first."""
    return phrases(VOCABULARY.heading)


def phrases(words: Iterable[str]) -> re.Pattern[str]:
    """Return a pattern that matches any of some whole phrases, the longest first."""
    longest_first = sorted(words, key=len, reverse=True)
    return re.compile(r"(?<!\w)(?:" + "|".join(map(re.escape, longest_first)) + r")(?!\w)")
