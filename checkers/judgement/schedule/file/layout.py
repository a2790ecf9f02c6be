"""Which rows of a file are its headings, and what each column holds."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from checkers.domain.errors import quoted
from checkers.domain.quantities.typed_numbers import FIGURE, whole_number
from checkers.judgement.schedule.file.records import Record
from checkers.judgement.schedule.headings.headings import NOTHING, meaning_of
from checkers.judgement.schedule.headings.meaning import ONE_A_ROW, Meaning
from checkers.judgement.schedule.headings.normal_form import plain
from checkers.wording.book import part

MOST_ROWS_BEFORE = 40
MOST_HEADING_ROWS = 4
MOST_COLUMNS = 500
ENOUGH = 3
READING = re.compile(rf"[<>≤≥]?\s?{FIGURE}")
IN_HEADINGS = frozenset({"0", "180", "0.5", "0,5", ".5", "1", "5"})


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its place from 0, its heading as written, and what it holds."""

    place: int
    heading: str
    meaning: Meaning

    @property
    def name(self) -> str:
        """What the column is called in messages."""
        return self.heading or part("schedule.column-without-heading", column=self.place + 1)


@dataclass(frozen=True, slots=True)
class Layout:
    """The columns of a file, and which of its first records are the headings.

    `first` and `last` are places among the records, `last` one past the end; both
    are 0 where the file has no headings.
    """

    columns: tuple[Column, ...]
    first: int = 0
    last: int = 0

    @property
    def score(self) -> int:
        """How much sense the headings make."""
        return sum(column.meaning.weight for column in self.columns)

    @property
    def worth(self) -> int:
        """The score, less what a further row of headings must add to be one."""
        return self.score - (self.last - self.first)

    @property
    def has_readings(self) -> bool:
        """Whether any column holds readings."""
        return any(one.meaning.holds_readings for one in self.columns)

    def of_kind(self, kind: str) -> tuple[Column, ...]:
        """Return the columns that hold a kind of thing."""
        return tuple(one for one in self.columns if one.meaning.kind == kind)


def find_layout(records: Sequence[Record]) -> Layout:
    """Return the rows of headings among the first records of a file, and their meanings.

    Titles may stand above them, and headings may take several rows, an upper one
    then holding for the columns to its right. Where no row makes sense as headings,
    the layout has no columns.
    """
    looked_at = records[:MOST_ROWS_BEFORE]
    bands = (
        _layout(looked_at, first, last)
        for first in range(len(looked_at))
        for last in range(first + 1, min(first + MOST_HEADING_ROWS, len(looked_at)) + 1)
        if all(map(_can_be_headings, looked_at[first:last]))
    )
    best = max(bands, key=lambda one: (one.worth, one.first - one.last), default=NO_LAYOUT)
    return _without_value_column(best) if best.score >= ENOUGH else NO_LAYOUT


NO_LAYOUT = Layout(())


def _can_be_headings(record: Record) -> bool:
    """Tell whether nothing in a row is a figure that only a reading can be."""
    if record.is_blank or record.problem:
        return False
    cells = (cell.strip() for cell in record.cells)
    return not any(READING.fullmatch(cell) and cell not in IN_HEADINGS for cell in cells)


def _layout(records: Sequence[Record], first: int, last: int) -> Layout:
    columns = columns_of([record.cells for record in records[first:last]])
    return Layout(tuple(columns), first, last)


def columns_of(rows: Sequence[Sequence[str]]) -> list[Column]:
    """Return the columns from the rows of headings, the upper ones first."""
    width = max(map(len, rows))
    cells = [[cell.strip() for cell in row] + [""] * (width - len(row)) for row in rows]
    filled = [*(_filled_right(cells[:last]) for last in range(1, len(cells))), cells[-1]]
    return [
        _column(place, [" ".join(part.split()) for part in parts if part])
        for place, parts in enumerate(zip(*filled, strict=True))
    ]


def _filled_right(rows: Sequence[Sequence[str]]) -> list[str]:
    """Return the last of some rows with each cell carried on over the blank ones to its right.

    So merged cells mean it. Where a row above begins a new group, nothing is carried on.
    """
    filled, held = [], ""
    for column in zip(*rows, strict=True):
        begins = any(column[:-1])
        held = column[-1] or ("" if begins else held)
        filled.append(held)
    return filled


def _column(place: int, parts: Sequence[str]) -> Column:
    """Return a column from its headings, top to bottom.

    An upper heading may have been carried on too far: where all together make less
    sense than the lower ones alone, these count.
    """
    together = [" ".join(parts[start:]) for start in range(len(parts) or 1)]
    heading = max(together, key=_sense)
    return Column(place, heading, meaning_of(heading))


def _sense(heading: str) -> tuple[int, int]:
    meaning = meaning_of(heading)
    return meaning.weight, len(heading) if meaning.is_reading else -len(heading)


def _without_value_column(layout: Layout) -> Layout:
    """Leave unused the columns that only make sense beside a column of readings of any test."""
    if layout.of_kind("value"):
        return layout
    columns = (
        replace(one, meaning=NOTHING) if one.meaning.kind in ONE_A_ROW else one
        for one in layout.columns
    )
    return replace(layout, columns=tuple(columns))


class BadMapping(Exception):
    """Raised when a mapping names a column that is not there, or a meaning not known here."""


Meanings = Sequence[tuple[str, str]]
"""For a column's number (from 1) or heading, its meaning in words that the program shows."""


def with_mapping(layout: Layout, mapping: Meanings, records: Sequence[Record]) -> Layout:
    """Return a layout with the meanings that a person gives to some columns.

    Inputs: the layout; the mapping; the first records of the file, whose widest tells how many
    columns there are.
    Raises BadMapping, with words that say what is wrong, for a column that is not there or is
    given two meanings, and for a meaning not known here.
    """
    width = max((len(one.cells) for one in records), default=0)
    columns = list(layout.columns)
    columns += [Column(at, "", NOTHING) for at in range(len(columns), min(width, MOST_COLUMNS))]
    named_before: dict[int, str] = {}
    for named, words in mapping:
        place = _place_of(named, columns)
        if place in named_before:
            raise BadMapping(_twice(place, named_before[place], named))
        named_before[place] = named
        columns[place] = replace(columns[place], meaning=_given(named, words))
    kept = max([len(layout.columns), *(place + 1 for place in named_before)])
    return replace(layout, columns=tuple(columns[:kept]))


def _twice(place: int, first: str, second: str) -> str:
    given = {"one": quoted(first), "other": quoted(second)}
    return part("schedule.mapped-twice", column=place + 1, **given)


def _place_of(named: str, columns: Sequence[Column]) -> int:
    number = whole_number(named)
    if number is not None and 1 <= number <= len(columns):
        return number - 1
    called = [one.place for one in columns if plain(one.heading) == plain(named)]
    if len(called) == 1:
        return called[0]
    if called:
        several = part("schedule.and").join(str(place + 1) for place in called)
        facts = {"columns": several, "named": quoted(named)}
        raise BadMapping(part("schedule.mapped-by-shared-heading", **facts))
    code = "mapped-to-no-column-of" if columns else "mapped-to-no-column"
    raise BadMapping(part(f"schedule.{code}", named=quoted(named), count=len(columns)))


def _given(named: str, words: str) -> Meaning:
    meaning = meaning_of(words)
    if meaning.asks or meaning is NOTHING:
        facts = {"named": named, "words": quoted(words)}
        raise BadMapping(part("schedule.mapped-to-no-meaning", **facts))
    return meaning
