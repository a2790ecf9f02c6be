"""From the cells of a row, by their columns, to an entry that can be judged."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from checkers.domain.device.readings import Test
from checkers.judgement.schedule.cells.cell_words import is_empty, is_word, names_a_spare, unwrapped
from checkers.judgement.schedule.cells.days import day_in
from checkers.judgement.schedule.file.layout import Column, Layout
from checkers.judgement.schedule.file.records import Record
from checkers.judgement.schedule.headings.headings import LONGEST
from checkers.judgement.schedule.headings.marks import marks_of
from checkers.judgement.schedule.headings.meaning import NOT_USED, ONE_A_ROW, PROPERTIES, Meaning
from checkers.judgement.schedule.rows.entry import Entry, RowKind
from checkers.judgement.schedule.rows.properties import READERS
from checkers.judgement.schedule.rows.row_readings import ANY_TEST, meaning_of_row, read_readings
from checkers.wording.book import part

TEXT_WIDTH = 3
SHOWN = 40
WHOLE = re.compile(r"\d{1,4}")
NOT_TESTED, NO_TRIP_WORD, UNSAID = "not-tested", "no-trip", "unsaid"
NO_TRIP = "no trip"
NEVER_MORE = frozenset({Test.NO_TRIP.value, Test.BUTTON.value})


@dataclass(frozen=True, slots=True)
class Rules:
    """How to read what a file leaves open: the local code, the waveform where no heading
    names one, and what n/t was said to stand for.
    """

    code: str = "iec"
    waveform: str = "ac"
    n_t: str = UNSAID


class EntryReader:
    """Reads the rows of one file; remembers its board, its last label and what was seen."""

    def __init__(self, layout: Layout, delimiter: str, rules: Rules) -> None:
        """Begin, with the columns of the file."""
        self.layout = layout
        self.rules = rules
        self.n_t_seen = False
        self.waiting: dict[int, Meaning] = {}
        self._delimiter = delimiter
        self._decimal_commas_seen = False
        self._section = ""
        self._labelled: Entry | None = None
        self._headings: set[tuple[str, ...]] = set()

    def look_ahead(self, records: Iterable[Record]) -> None:
        """Note what the first rows of the file say of all of them."""
        for record in records:
            self._width_problem(record)

    def note_heading(self, record: Record) -> Entry:
        """Return the entry of a row of headings, to be known again where it is repeated."""
        self._headings.add(_stripped(record))
        return Entry(record, RowKind.HEADING)

    def read(self, record: Record) -> Entry:
        """Return the entry of a row."""
        early = self._without_cells(record)
        if early is not None:
            return early
        entry = Entry(record, board=self._section)
        cells = self._understandable(record, entry)
        self._read_cells(cells, entry)
        self._name(cells, entry)
        entry.kind = self._kind(cells, entry)
        return entry

    def _understandable(self, record: Record, entry: Entry) -> dict[int, str]:
        """Return what each cell shows; one too long to be understood is noted and left out."""
        cells = {place: unwrapped(cell) for place, cell in enumerate(record.cells)}
        for column in self.layout.columns:
            cell = cells.get(column.place, "")
            if len(cell) > LONGEST:
                cells[column.place] = ""
                self._note_too_long(cell, column, entry)
        return cells

    def _note_too_long(self, cell: str, column: Column, entry: Entry) -> None:
        shown = cell[:SHOWN] + "…"
        if column.meaning.holds_readings:
            entry.note_unread_reading(column.name, shown, part("schedule.too-long"))
        elif column.meaning.kind in PROPERTIES or column.meaning.kind in ONE_A_ROW:
            entry.note_problem(column.name, shown, part("schedule.too-long"))

    def _without_cells(self, record: Record) -> Entry | None:
        """Return the entry of a row that is not read cell by cell."""
        problem = record.problem or self._width_problem(record)
        if not problem and record.is_blank:
            return Entry(record, RowKind.BLANK)
        if not problem and _stripped(record) in self._headings:
            return Entry(record, RowKind.HEADING)
        if not problem and not self.layout.columns:
            problem = part("schedule.no-headings-above")
        return Entry(record, RowKind.NOT_READ, note=problem) if problem else None

    def _width_problem(self, record: Record) -> str:
        """Return why a row's cells cannot be told apart: a cell too many shifts all after it."""
        width = len(self.layout.columns)
        if not width or record.is_blank:
            return ""
        if any(cell.strip() for cell in record.cells[width:]):
            self._note_decimal_commas(record)
            code = "cells-too-many-by-comma" if self._delimiter == "," else "cells-too-many"
            return part(f"schedule.{code}", cells=len(record.cells), headings=width)
        shifted = self._decimal_commas_seen and self._could_be_split(record)
        return part("schedule.figure-perhaps-split") if shifted else ""

    def _note_decimal_commas(self, record: Record) -> None:
        """Note where figures were pushed out of their columns: commas split them elsewhere too."""
        last = next(cell for cell in reversed(record.cells) if cell.strip())
        if self._delimiter == "," and WHOLE.fullmatch(last.strip()):
            self._decimal_commas_seen = True

    def _could_be_split(self, record: Record) -> bool:
        """Tell whether two neighbouring cells of readings could be one figure, cut at its comma."""
        places = [one.place for one in self.layout.columns if one.meaning.holds_readings]
        cells = dict(enumerate(cell.strip() for cell in record.cells))
        return any(
            WHOLE.fullmatch(cells.get(place, "")) and WHOLE.fullmatch(cells.get(place + 1, ""))
            for place in places
        )

    def _read_cells(self, cells: Mapping[int, str], entry: Entry) -> None:
        one_a_row = {
            column.meaning.kind: cells.get(column.place, "")
            for column in self.layout.columns
            if column.meaning.kind in ONE_A_ROW and not is_empty(cells.get(column.place, ""))
        }
        for column in self.layout.columns:
            cell = cells.get(column.place, "")
            if cell and column.meaning.kind not in NOT_USED:
                self._read_cell(cell, column, one_a_row, entry)

    def _read_cell(
        self, cell: str, column: Column, one_a_row: Mapping[str, str], entry: Entry
    ) -> None:
        kind = column.meaning.kind
        if column.meaning.is_reading:
            self._take(cell, column, column.meaning, entry)
        elif kind == "value":
            meaning = meaning_of_row(one_a_row, entry) if len(one_a_row) > 1 else ANY_TEST
            unit = meaning.unit or column.meaning.unit
            self._take(cell, column, meaning.with_unit(unit), entry)
        elif kind == "day" and not is_empty(cell):
            self._read_day(cell, column, entry)
        elif kind in READERS and not is_empty(cell) and not is_word(cell, "ditto"):
            READERS[kind](cell, column, entry)

    def _take(self, cell: str, column: Column, meaning: Meaning, entry: Entry) -> None:
        """Take the readings of a cell into an entry, and note what the column must be asked."""
        read = read_readings(cell, column, meaning, self.rules.waveform, entry)
        if read.waits:
            self.waiting.setdefault(column.place, meaning)
        entry.readings += [
            kept for one in read.readings if (kept := self._without_n_t(one)) is not None
        ]

    def _without_n_t(self, reading: dict[str, Any]) -> dict[str, Any] | None:
        """Return a reading; none where n/t stands for a test that was not made.

        In a test in which the device is to hold, and of a button, it never stands for more.
        """
        if not is_word(reading["value"], "n-t"):
            return reading
        self.n_t_seen = True
        if self.rules.n_t == NOT_TESTED or reading["test"] in NEVER_MORE:
            return None
        return reading | {"value": NO_TRIP} if self.rules.n_t == NO_TRIP_WORD else reading

    def _read_day(self, cell: str, column: Column, entry: Entry) -> None:
        try:
            day = day_in(cell, self.rules.code)
        except ValueError as bad:
            entry.note_problem(column.name, cell, str(bad))
            return
        if day > date.today():  # noqa: DTZ011  # the day where the person stands
            entry.note_problem(column.name, cell, part("schedule.day-in-the-future"))
        else:
            entry.day = day

    def _name(self, cells: Mapping[int, str], entry: Entry) -> None:
        """Give the entry its board, its label and its name."""
        devices = [*self._cells_of("device_label", cells), *self._cells_of("device", cells)]
        above = self._labelled
        if devices and is_word(devices[0], "ditto") and above:
            entry.label, entry.is_identified = above.label, above.is_identified
        elif devices:
            self._labelled = entry
        board = " ".join(self._cells_of("board", cells))
        if board:
            entry.board = board.casefold()
        circuits = [one for one in self._cells_of("circuit", cells) if not is_empty(one)]
        entry.name = entry.label or " ".join(circuits) or (devices[0] if devices else "")

    def _cells_of(self, kind: str, cells: Mapping[int, str]) -> list[str]:
        found = (cells.get(column.place, "") for column in self.layout.of_kind(kind))
        return [cell for cell in found if cell]

    def _kind(self, cells: Mapping[int, str], entry: Entry) -> RowKind:
        if entry.has_readings:
            return RowKind.DEVICE
        filled = [cell for cell in cells.values() if cell]
        if self._is_spare(cells):
            return RowKind.SPARE
        if len(filled) == 1 and len(self.layout.columns) >= TEXT_WIDTH:
            names_a_board = any(word.means == "board" for word in marks_of(filled[0]).words)
            if names_a_board:
                self._section = filled[0].casefold()
            if names_a_board or not entry.label:
                return RowKind.TEXT
        named = entry.label or entry.device or entry.names_a_device
        return RowKind.NOT_TESTED if named else RowKind.NO_DEVICE

    def _is_spare(self, cells: Mapping[int, str]) -> bool:
        kinds = ("circuit", "device", "device_label")
        named = [cell for kind in kinds for cell in self._cells_of(kind, cells)]
        notes = self._cells_of("notes", cells)
        return any(map(names_a_spare, named)) or any(is_word(one, "spare") for one in notes)


def _stripped(record: Record) -> tuple[str, ...]:
    return tuple(cell.strip() for cell in record.cells)
