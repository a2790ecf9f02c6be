"""Days as they stand in the cells of schedules."""

from __future__ import annotations

import re
from datetime import date

from checkers.domain.codes.registry import CODES
from checkers.domain.inputs.believable_days import EARLIEST
from checkers.judgement.schedule.headings.normal_form import plain
from checkers.judgement.schedule.headings.vocabulary import VOCABULARY
from checkers.wording.book import part

ISO = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]\d.*)?")
WITH_MARKS = re.compile(r"(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})")
IN_WORDS = re.compile(r"(\d{1,2})[. -]*([^\W\d_]{3,10})\.?[. -]*(\d{4}|\d{2})", re.IGNORECASE)


def day_in(cell: str, code: str) -> date:
    """Return the day that a cell names.

    Inputs: the cell; the key of the local code. 3/4/2026 is read day first, except
    where the country writes the month first, or only one order makes a day.
    Raises ValueError, with words that say what would be right.
    """
    text = cell.strip()
    match = ISO.fullmatch(text)
    if match:
        return _day(cell, int(match[1]), int(match[2]), int(match[3]))
    match = WITH_MARKS.fullmatch(text)
    if match:
        return _in_order(cell, match, month_first=CODES[code].month_first and match[2] != ".")
    match = IN_WORDS.fullmatch(text)
    if match and _month(match[2]):
        return _day(cell, _year(match[3]), _month(match[2]), int(match[1]))
    raise ValueError(part("schedule.not-a-day", cell=cell))


def _in_order(cell: str, match: re.Match[str], *, month_first: bool) -> date:
    first, second, year = int(match[1]), int(match[3]), _year(match[4])
    if month_first and first <= 12:
        return _day(cell, year, first, second)
    if not month_first and second > 12:
        return _day(cell, year, first, second)
    return _day(cell, year, second, first)


def _month(word: str) -> int:
    """Return the month that a word begins like, from 1, or 0; juin is not juillet."""
    start = plain(word)
    return VOCABULARY.month.get(start[:4], 0) or VOCABULARY.month.get(start[:3], 0)


def _year(text: str) -> int:
    return int(text) if len(text) > 2 else 2000 + int(text)


def _day(cell: str, year: int, month: int, day: int) -> date:
    try:
        found = date(year, month, day)
    except ValueError:
        raise ValueError(part("schedule.not-in-the-calendar", cell=cell)) from None
    if found < EARLIEST:
        raise ValueError(part("schedule.day-too-early", cell=cell))
    return found
