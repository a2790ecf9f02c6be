"""Which character stands between the cells of a file."""

from __future__ import annotations

import re
from collections.abc import Sequence

from checkers.judgement.schedule.file.layout import Layout, find_layout
from checkers.judgement.schedule.file.lines import Line, Lines
from checkers.judgement.schedule.file.records import Record, Records

NAMES = {",": "comma", ";": "semicolon", "\t": "tab", "|": "bar", "^": "caret", "~": "tilde"}
BY_NAME = {name: delimiter for delimiter, name in NAMES.items()} | {"pipe": "|", "space": " "}
DECLARED = re.compile(r'"?sep=(.)"?', re.IGNORECASE)
ROWS_LOOKED_AT = 60


def records_of(lines: Sequence[Line], delimiter: str) -> list[Record]:
    """Return the records of some lines; the last may be one that is not finished."""
    reader = Records(delimiter)
    found = [record for line in lines for record in reader.feed(line)]
    return [*found, *reader.finish()]


def delimiter_of(lines: Sequence[Line]) -> str:
    """Return the delimiter with which the first lines make most sense as a schedule.

    A first line such as `sep=;` decides. Else the headings do, and where they make
    the same sense, the number of rows as wide as the headings.
    """
    declared = DECLARED.fullmatch(lines[0].text.strip()) if lines else None
    if declared and declared[1] != '"':
        return declared[1]
    return max(NAMES, key=lambda one: _sense(lines[:ROWS_LOOKED_AT], one))


def _sense(lines: Sequence[Line], delimiter: str) -> tuple[int, int]:
    records = records_of(lines, delimiter)
    layout = find_layout(records)
    return layout.score, _as_wide(records, layout)


def _as_wide(records: Sequence[Record], layout: Layout) -> int:
    width = len(layout.columns)
    return sum(len(one.cells) == width for one in records[layout.last :]) if width > 1 else 0


def sense_of(text: str) -> int:
    """Return how much sense a text makes as a schedule, to tell code pages apart."""
    lines = Lines()
    listed = [*lines.feed(text), *lines.finish()]
    return max(_sense(listed[:ROWS_LOOKED_AT], one)[0] for one in NAMES)
