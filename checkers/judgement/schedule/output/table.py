"""A schedule's rows as CSV or TSV: the verdict first, then the cells as they were."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from checkers.domain.sources.cautions import CAUTIONS
from checkers.domain.verdicts import Outcome
from checkers.judgement.schedule.file.decoding import MARK
from checkers.judgement.schedule.output.base import outcome_words
from checkers.judgement.schedule.output.formula_guard import harmless
from checkers.judgement.schedule.rows.entry import RowKind
from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.schedule import Schedule
from checkers.wording.book import part

HEADINGS = (
    "schedule.table-line",
    "schedule.table-row",
    "schedule.table-outcome",
    "schedule.table-why",
    "schedule.table-what-to-do",
    "schedule.table-limits-from",
    "schedule.table-caution",
)
LINE_END = "\r\n"
SHORT = {caution.key: caution.short for caution in CAUTIONS}
CAUTION_FOR = {
    Outcome.FAIL: SHORT["never-leave"],
    Outcome.PASS: SHORT["ac-test-says-nothing-of-dc"],
}


class TableOutput:
    """Writes a row of cells for each row of the file, in the same order."""

    def __init__(self, delimiter: str) -> None:
        """Begin, with the character between cells."""
        self._delimiter = delimiter

    def head(self, reply: Mapping[str, Any], schedule: Schedule) -> str:
        """Return the mark by which spreadsheets know UTF-8."""
        del reply, schedule
        return MARK

    def tail(self, reply: Mapping[str, Any], schedule: Schedule) -> str:
        """Return nothing: there are as many rows as the file had."""
        del reply, schedule
        return ""

    def row(self, row: Row) -> str:
        """Return one row; on a row of headings, the headings of what is added."""
        added = tuple(map(part, HEADINGS)) if row.kind is RowKind.HEADING else _verdict(row)
        cells = (self._cell(harmless(cell)) for cell in (*added, *row.cells))
        return self._delimiter.join(cells) + LINE_END

    def _cell(self, cell: str) -> str:
        if any(mark in cell for mark in (self._delimiter, '"', "\n", "\r", "\t", ";", ",")):
            return '"' + cell.replace('"', '""') + '"'
        return cell


def _verdict(row: Row) -> tuple[str, ...]:
    caution = CAUTION_FOR.get(row.outcome, "") if row.outcome else ""
    return (
        str(row.line),
        row.kind.value,
        outcome_words(row),
        row.why,
        row.do_next,
        row.sources,
        caution,
    )
