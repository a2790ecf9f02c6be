"""From the pieces of a file to its records, once encoding, delimiter and headings are known."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum, auto

from checkers.judgement.schedule.file.decoding import MARK, Decoder, encoding_of
from checkers.judgement.schedule.file.delimiters import delimiter_of, records_of, sense_of
from checkers.judgement.schedule.file.layout import Layout, Meanings, find_layout, with_mapping
from checkers.judgement.schedule.file.lines import Line, Lines
from checkers.judgement.schedule.file.records import Record, Records

SAMPLE = 65_536
LINES_LOOKED_AT = 200
TEXT = "text"


class Part(Enum):
    """Where a record stands in the file."""

    BEFORE = auto()
    HEADINGS = auto()
    ROWS = auto()


@dataclass(frozen=True, slots=True)
class Given:
    """What a person says of the file; empty where it is to be found out."""

    delimiter: str = ""
    encoding: str = ""
    mapping: Meanings = ()


class Intake:
    """Takes a file in pieces, of bytes or of text, and hands out its records.

    The first pieces wait until there is enough to tell encoding, delimiter and headings.
    """

    def __init__(self, given: Given) -> None:
        """Begin, with what is known of the file."""
        self.encoding = given.encoding
        self.delimiter = given.delimiter
        self.layout: Layout | None = None
        self.first_rows: list[Record] = []
        self._given = given
        self._waiting: list[bytes | str] = []
        self._size = 0
        self._decoder: Decoder | None = None
        self._lines = Lines()
        self._records: Records | None = None
        self._count = 0

    def feed(self, piece: bytes | str) -> Iterator[tuple[Part, Record]]:
        """Yield the records that a further piece finishes; raises BadMapping at the first."""
        if self.layout is None:
            self._waiting.append(piece)
            self._size += len(piece)
            if self._size >= SAMPLE:
                yield from self._start()
        else:
            yield from self._read(self._lines.feed(self._text(piece)))

    def finish(self) -> Iterator[tuple[Part, Record]]:
        """Yield the records that are left."""
        if self.layout is None:
            yield from self._start()
        assert self._records is not None  # noqa: S101  # made by _start
        yield from self._read(self._lines.feed(self._text(b"", last=True)))
        yield from self._read(self._lines.finish())
        yield from map(self._placed, self._records.finish())

    def _start(self) -> Iterator[tuple[Part, Record]]:
        """Find out what the file is from the pieces that wait, and read them."""
        lines = list(self._lines.feed(self._first_text()))
        looked_at = lines or [Line(1, self._lines.rest)]
        self.delimiter = self.delimiter or delimiter_of(looked_at)
        self._records = Records(self.delimiter)
        records = records_of(looked_at[:LINES_LOOKED_AT], self.delimiter)
        self.layout = with_mapping(find_layout(records), self._given.mapping, records)
        self.first_rows = records[self.layout.last :]
        yield from self._read(iter(lines))

    def _first_text(self) -> str:
        pieces, self._waiting = self._waiting, []
        texts = [piece for piece in pieces if isinstance(piece, str)]
        if texts:
            self.encoding = TEXT
            return "".join(texts).removeprefix(MARK)
        sample = b"".join(piece for piece in pieces if isinstance(piece, bytes))
        self.encoding = self.encoding or encoding_of(sample[:SAMPLE], sense_of)
        self._decoder = Decoder(self.encoding)
        return self._decoder.feed(sample)

    def _text(self, piece: bytes | str, *, last: bool = False) -> str:
        if isinstance(piece, str):
            return piece
        return self._decoder.feed(piece, last=last) if self._decoder else ""

    def _read(self, lines: Iterator[Line]) -> Iterator[tuple[Part, Record]]:
        assert self._records is not None  # noqa: S101  # made by _start
        for line in lines:
            yield from map(self._placed, self._records.feed(line))

    def _placed(self, record: Record) -> tuple[Part, Record]:
        assert self.layout is not None  # noqa: S101  # made by _start
        number, self._count = self._count, self._count + 1
        if number < self.layout.first:
            return Part.BEFORE, record
        return (Part.HEADINGS if number < self.layout.last else Part.ROWS), record
