"""The readings of one row, from its columns of readings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from checkers.domain.device.readings import Test
from checkers.domain.quantities.multiples import parse_multiple
from checkers.domain.quantities.quantity import parse_quantity
from checkers.domain.quantities.typed_numbers import NotAQuantity
from checkers.judgement.schedule.cells.cell_words import is_empty, is_word
from checkers.judgement.schedule.cells.cells import NOTHING, Read, read_cell
from checkers.judgement.schedule.file.layout import Column
from checkers.judgement.schedule.headings.headings import meaning_of
from checkers.judgement.schedule.headings.marks import marks_of
from checkers.judgement.schedule.headings.meaning import READING, Meaning
from checkers.judgement.schedule.headings.normal_form import plain
from checkers.judgement.schedule.rows.entry import Entry
from checkers.wording.book import part

ANY_TEST = Meaning(READING)
NOT_KNOWN = {
    "phase": ("schedule.about-phase", "schedule.not-a-phase"),
    "waveform": ("schedule.about-waveform", "schedule.not-a-waveform"),
    "unit": ("schedule.about-unit", "schedule.not-a-unit"),
}


def read_readings(cell: str, column: Column, meaning: Meaning, waveform: str, entry: Entry) -> Read:
    """Read the cell of a column of readings, and note in an entry why it cannot be used."""
    if is_empty(cell):
        return NOTHING
    if is_word(cell, "ditto"):
        entry.note_unread_reading(column.name, cell, part("schedule.ditto-is-no-reading"))
        return NOTHING
    if meaning.asks:
        entry.note_unread_reading(column.name, cell, meaning.asks)
        return NOTHING
    read = read_cell(cell, meaning, waveform)
    for says in read.problems:
        entry.note_unread_reading(column.name, cell, says)
    return read


def meaning_of_row(cells: Mapping[str, str], entry: Entry) -> Meaning:
    """Return what a row's reading is about, where the row itself says so.

    Inputs: the row's cells by kind of column: test, multiple, test_current, phase,
    waveform, unit. What cannot be used is noted in the entry.
    """
    meaning = _test(cells.get("test", ""), entry)
    multiple, current = cells.get("multiple", ""), cells.get("test_current", "")
    try:
        if multiple:
            meaning = replace(meaning, multiples=(parse_multiple(multiple),))
        elif current:
            meaning = replace(meaning, current=parse_quantity(current, "residual_current"))
    except NotAQuantity as bad:
        about = part("schedule.about-test-current")
        entry.note_problem(about, multiple or current, str(bad))
    return _shaped(meaning, cells, entry)


def _test(cell: str, entry: Entry) -> Meaning:
    """Return what the cell that names the test means, read as a heading is."""
    if not cell:
        return ANY_TEST
    meaning = meaning_of(cell)
    if meaning.is_reading and meaning.is_sure:
        return meaning
    if plain(cell) == "trip":
        return Meaning(READING, test=Test.TRIP_TIME.value)
    entry.note_problem(part("schedule.about-test"), cell, part("schedule.not-a-test"))
    return ANY_TEST


def _shaped(meaning: Meaning, cells: Mapping[str, str], entry: Entry) -> Meaning:
    """Add start phase, waveform and unit, each read as in a heading."""
    for kind, (about, says) in NOT_KNOWN.items():
        cell = cells.get(kind, "")
        if not cell:
            continue
        marks = marks_of(f"({cell})" if kind == "unit" or cell in ("+", "-") else cell)
        waveforms = [word.means for word in marks.words if word.respect == "waveform"]
        found = {"phase": marks.phases, "waveform": waveforms, "unit": marks.units}[kind]
        if len(found) != 1:
            entry.note_problem(part(about), cell, part(says))
        elif kind == "phase":
            meaning = replace(meaning, phases=(found[0],))
        elif kind == "waveform":
            meaning = replace(meaning, waveform=found[0])
        else:
            meaning = replace(meaning, unit=found[0])
    return meaning
