"""A whole schedule, taken in pieces: rows with verdicts come out as soon as they are known."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from checkers.domain.verdicts import Finding, Judges, Outcome, Result, worst
from checkers.judgement.schedule.file.intake import Given, Intake, Part
from checkers.judgement.schedule.file.layout import NO_LAYOUT, Layout
from checkers.judgement.schedule.file.records import Record
from checkers.judgement.schedule.rows.danger import WorstFirst
from checkers.judgement.schedule.rows.entry import Entry, RowKind
from checkers.judgement.schedule.rows.entry_reader import EntryReader, Rules
from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.same_device import Known, Memory, Neighbours
from checkers.judgement.schedule.rows.totals import Totals
from checkers.wording.book import part
from checkers.wording.finding import finding

Judge = Callable[[Entry], Result]
MOST_LISTED = 1000
BEGINS_ANEW = frozenset({RowKind.TEXT, RowKind.HEADING})  # perhaps with another board


class Schedule:
    """Takes the pieces of one file and gives its rows, in order, each with its verdict."""

    def __init__(self, judge: Judge, given: Given, rules: Rules) -> None:
        """Begin, with the function that judges the readings of one device."""
        self.intake = Intake(given)
        self.totals = Totals()
        self.worst = WorstFirst()
        self.unread: list[Row] = []
        self.reader: EntryReader | None = None
        self._judge = judge
        self._rules = rules
        self._neighbours = Neighbours()
        self._memory = Memory()

    @property
    def layout(self) -> Layout:
        """The columns, as soon as the headings have been seen."""
        return self.intake.layout or NO_LAYOUT

    def feed(self, piece: bytes | str) -> Iterator[Row]:
        """Yield the rows that a further piece of the file finishes."""
        yield from self._rows_of(self.intake.feed(piece))

    def finish(self) -> Iterator[Row]:
        """Yield the rows that are left when the file has ended."""
        yield from self._rows_of(self.intake.finish())
        for group in self._neighbours.finish():
            yield from self._rows(group)

    def _rows_of(self, records: Iterator[tuple[Part, Record]]) -> Iterator[Row]:
        for where, record in records:
            for group in self._neighbours.feed(self._entry(where, record)):
                yield from self._rows(group)

    def _entry(self, where: Part, record: Record) -> Entry:
        if self.reader is None:
            self.reader = EntryReader(self.layout, self.intake.delimiter, self._rules)
            self.reader.look_ahead(self.intake.first_rows)
        if where is Part.HEADINGS:
            return self.reader.note_heading(record)
        if where is Part.BEFORE and not record.problem:
            return Entry(record, RowKind.BLANK if record.is_blank else RowKind.TEXT)
        return self.reader.read(record)

    def _rows(self, group: Sequence[Entry]) -> Iterator[Row]:
        """Yield the rows of one device, or of one row without a device."""
        for row in self._judged(group):
            self.totals.add(row)
            self.worst.add(row)
            if row.kind is RowKind.NOT_READ and len(self.unread) < MOST_LISTED:
                self.unread.append(row)
            yield row

    def _judged(self, group: Sequence[Entry]) -> Iterator[Row]:
        first = group[0]
        if first.kind in BEGINS_ANEW:
            self._memory.forget()
        if first.kind is RowKind.NOT_READ:
            yield self._not_read(first)
        elif first.kind not in (RowKind.DEVICE, RowKind.NOT_TESTED):
            yield _row(first, first.kind)
        else:
            yield from self._device_rows(group)

    def _not_read(self, entry: Entry) -> Row:
        row = _row(entry, RowKind.NOT_READ, outcome=Outcome.CANNOT_SAY)
        unread = _open_finding("row-not-read", row.place, why=entry.note)
        return replace(row, note="", findings=(unread,))

    def _device_rows(self, group: Sequence[Entry]) -> Iterator[Row]:
        whole = group[0]
        for other in group[1:]:
            whole.take_in(other)
        known = self._memory.get(whole.key)
        if known is not None and known.holds_all_of(whole):
            yield from (_repeated(entry, known) for entry in group)
            return
        if known is not None:
            known.tell(whole)
        lead = next((one for one in group if one.kind is RowKind.DEVICE), group[0])
        row = self._lead_row(whole, lead, known)
        now = Known(row.line, _outcome(row), whole.has_readings, row.still_to_do)
        for entry in group:
            yield row if entry is lead else _repeated(entry, now)

    def _lead_row(self, whole: Entry, lead: Entry, known: Known | None) -> Row:
        """Return the row that carries the device's verdict, and remember the device."""
        row = self._verdict(whole, lead)
        now = Known(
            row.line,
            _outcome(row),
            whole.has_readings,
            row.still_to_do,
            whole.device,
            whole.readings,
        )
        if known is not None:
            now = self._again(known, now)
            answers = now.line if whole.has_readings and not known.is_tested else 0
            row = _again(replace(row, still_to_do=now.still_to_do), now.line, answers)
            self.worst.add(replace(row, kind=RowKind.DEVICE))
        self._memory.put(whole.key, now)
        return row

    def _again(self, known: Known, row: Known) -> Known:
        """Count a device anew of which a further row was judged; returns what it comes to."""
        whole = known.with_row(row)
        if known.is_tested or not row.is_tested:
            self.totals.correct(known.standing, whole.standing)
        else:
            self.totals.found_tested(whole.standing)
            self.worst.drop(known.line)
        return whole

    def _verdict(self, whole: Entry, lead: Entry) -> Row:
        row = _row(lead, RowKind.DEVICE if whole.has_readings else RowKind.NOT_TESTED)
        result = self._judge(whole) if whole.readings else Result(())
        findings = [replace(one, device=row.place) for one in result.findings]
        findings += [
            _open_finding(
                "cell-not-usable", row.place, heading=one.heading, cell=one.cell, why=one.says
            )
            for one in whole.problems
        ]
        if not whole.has_readings:
            findings.append(_open_finding("row-without-reading", row.place))
        return replace(
            row,
            outcome=worst(one.outcome for one in findings),
            findings=tuple(findings),
            still_to_do=tuple(result.still_to_do),
        )


def _row(entry: Entry, kind: RowKind, outcome: Outcome | None = None) -> Row:
    record = entry.record
    return Row(record.line, kind, record.cells, entry.name, outcome, note=entry.note)


def _again(row: Row, line: int, answers: int) -> Row:
    code = "same-device-again" if row.kind is RowKind.DEVICE else "same-device"
    note = part(f"schedule.{code}", line=line)
    return replace(row, kind=RowKind.SAME_DEVICE, note=note, answers=answers)


def _repeated(entry: Entry, known: Known) -> Row:
    row = _row(entry, RowKind.SAME_DEVICE, known.outcome)
    note = part("schedule.same-device", line=known.line)
    return replace(row, still_to_do=known.still_to_do, note=note)


def _outcome(row: Row) -> Outcome:
    assert row.outcome is not None  # noqa: S101  # a device always has one
    return row.outcome


def _open_finding(code: str, device: str, **facts: str) -> Finding:
    judges = Judges.DEVICE_STANDARD
    return finding(f"schedule.{code}", Outcome.CANNOT_SAY, judges, facts, device=device)
