"""Rows of cells from lines: quoted cells may hold delimiters, quotation marks and line ends."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from checkers.judgement.schedule.file.lines import LONGEST, Line
from checkers.wording.book import part

QUOTE = '"'
MOST_LINES_IN_A_CELL = 50
MOST_CELLS = 500
MOST_IN_A_CELL = 32_767  # what the common spreadsheets hold in one cell
SHOWN = 500


@dataclass(frozen=True, slots=True)
class Record:
    """One row of cells, the line it begins on, and why it cannot be read, if so."""

    line: int
    cells: tuple[str, ...]
    problem: str = ""

    @property
    def is_blank(self) -> bool:
        """Whether nothing stands in any cell."""
        return not any(cell.strip() for cell in self.cells)


@dataclass(slots=True)
class Splitter:
    """Splits one record into cells, line by line; `inside` is the open quoted cell."""

    delimiter: str
    cells: list[str] = field(default_factory=list)
    inside: list[str] | None = None

    def take(self, text: str) -> bool:
        """Take one more line; returns whether the record is complete with it."""
        if self.inside is None and QUOTE not in text:
            self.cells = text.split(self.delimiter)
            return True
        at = 0 if self.inside is None else self._quoted(text, 0)
        while 0 <= at <= len(text):
            at = self._cell(text, at)
        return self.inside is None

    def _cell(self, text: str, at: int) -> int:
        """Take the cell at a place; returns where the next begins, or -1 inside an open one."""
        opening = at
        while text[opening : opening + 1] == " ":
            opening += 1
        if text[opening : opening + 1] == QUOTE:
            self.inside = []
            return self._quoted(text, opening + 1)
        end = text.find(self.delimiter, at)
        end = len(text) if end < 0 else end
        self.cells.append(text[at:end])
        return end + 1

    def _quoted(self, text: str, at: int) -> int:
        """Take a quoted cell, or the part of it on this line; as for _cell."""
        assert self.inside is not None  # noqa: S101  # only called inside a quoted cell
        start = at
        while (mark := text.find(QUOTE, at)) >= 0:
            if text[mark + 1 : mark + 2] == QUOTE:
                at = mark + 2
                continue
            end = self._closes(text, mark)
            if end >= 0:
                self._close(text[start:mark])
                return end + 1
            at = mark + 1
        self.inside.append(text[start:])
        return -1

    def _closes(self, text: str, mark: int) -> int:
        """Return where the delimiter, or the end, follows a quotation mark; -1 if neither does."""
        end = mark + 1
        while text[end : end + 1] == " " and self.delimiter != " ":
            end += 1
        return end if end == len(text) or text[end] == self.delimiter else -1

    def _close(self, last: str) -> None:
        assert self.inside is not None  # noqa: S101  # only called inside a quoted cell
        self.cells.append("\n".join([*self.inside, last]).replace(QUOTE * 2, QUOTE))
        self.inside = None


class Records:
    """Rows of cells from lines, in order; a line that cannot be read becomes a record too."""

    def __init__(self, delimiter: str) -> None:
        """Begin, with one character between cells."""
        self.delimiter = delimiter
        self._waiting: list[Line] = []
        self._splitter = Splitter(delimiter)

    def feed(self, line: Line) -> Iterator[Record]:
        """Yield the records that a further line finishes."""
        again = [line]
        while again:
            yield from self._take(again.pop(0), again)

    def finish(self) -> Iterator[Record]:
        """Yield what waits for a quotation mark that never came."""
        while self._waiting:
            again: list[Line] = []
            yield self._give_up(again)
            while again:
                yield from self._take(again.pop(0), again)

    def _take(self, line: Line, again: list[Line]) -> Iterator[Record]:
        self._waiting.append(line)
        if line.cut:
            yield self._too_long(again)
        elif self._splitter.take(line.text):
            yield self._whole()
        elif self._is_too_much():
            yield self._give_up(again)

    def _is_too_much(self) -> bool:
        letters = sum(len(one.text) for one in self._waiting)
        return len(self._waiting) > MOST_LINES_IN_A_CELL or letters > LONGEST

    def _whole(self) -> Record:
        line, cells = self._waiting[0], self._splitter.cells
        self._begin_anew()
        kept = tuple(_shown(cell) for cell in cells[:MOST_CELLS])
        return Record(line.number, kept, _problem_with(cells))

    def _give_up(self, again: list[Line]) -> Record:
        """Report the line that opens the quotation mark; the lines after it are read anew."""
        first, *later = self._waiting
        self._begin_anew()
        again[:0] = later
        return Record(first.number, (_shown(first.text),), part("schedule.quotation-never-closed"))

    def _too_long(self, again: list[Line]) -> Record:
        if len(self._waiting) > 1:
            return self._give_up(again)
        line = self._waiting[0]
        self._begin_anew()
        length = len(line.text) + line.cut
        problem = part("schedule.row-too-long", length=length, most=LONGEST)
        return Record(line.number, (_shown(line.text),), problem)

    def _begin_anew(self) -> None:
        self._waiting = []
        self._splitter = Splitter(self.delimiter)


def _problem_with(cells: list[str]) -> str:
    if len(cells) > MOST_CELLS:
        return part("schedule.row-too-wide", cells=len(cells), most=MOST_CELLS)
    longest = max(map(len, cells))
    if longest > MOST_IN_A_CELL:
        return part("schedule.row-with-long-cell", length=longest, most=MOST_IN_A_CELL)
    return part("schedule.row-with-nul") if any("\0" in cell for cell in cells) else ""


def _shown(cell: str) -> str:
    """Return a cell as it is kept: NUL made visible, and cut where it is absurdly long."""
    cell = cell.replace("\0", "␀") if "\0" in cell else cell
    return cell if len(cell) <= MOST_IN_A_CELL else cell[:SHOWN] + "…"
