"""When a test is due again, by the interval of the code for a kind of place."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from checkers.domain.codes.rules import Interval
from checkers.domain.device.abilities import Ability
from checkers.domain.sources.documents import Citation
from checkers.judgement.case import Case
from checkers.wording.book import part

ANY_PLACE = "any installation"
EVERY = re.compile(r"(?:every |each )?(?:(\d{1,3}) )?(day|week|month|year)s?\b.*", re.IGNORECASE)
LONGEST = {"day": 999, "week": 520, "month": 120, "year": 10}


@dataclass(frozen=True, slots=True)
class Every:
    """An interval as a number of days, weeks, months or years, and the words for it."""

    count: int
    unit: str
    words: str

    @property
    def is_daily(self) -> bool:
        """Whether it comes round each day."""
        return (self.count, self.unit) == (1, "day")

    def after(self, last: date) -> date:
        """Return the day on which the interval after a day ends.

        A month that lacks the day ends on its own last day.
        """
        if self.unit in ("day", "week"):
            return last + timedelta(days=self.count * (7 if self.unit == "week" else 1))
        months = last.month - 1 + self.count * (12 if self.unit == "year" else 1)
        year, month = last.year + months // 12, months % 12 + 1
        return date(year, month, min(last.day, _days_in(year, month)))


@dataclass(frozen=True, slots=True)
class Due:
    """A test that is due: its day, the interval, and who asks for it.

    `last` is the day it was last done, or None where that is not known.
    """

    test: str
    day: date
    every: Every
    last: date | None
    asked_by: str
    sources: tuple[Citation, ...]


def _days_in(year: int, month: int) -> int:
    following = date(year + month // 12, month % 12 + 1, 1)
    return (following - timedelta(days=1)).day


def parse_every(text: str) -> Every | None:
    """Return an interval such as "6 months", "each day before use" or "2 years", or None."""
    match = EVERY.fullmatch(" ".join(text.split()))
    if match is None:
        return None
    count, unit = int(match[1] or 1), match[2].lower()
    return Every(count, unit, text) if 1 <= count <= LONGEST[unit] else None


def places_of(case: Case) -> list[str]:
    """Return the kinds of place for which the code has intervals on that day."""
    return list(dict.fromkeys(rule.place for rule in _rules(case)))


def due_tests(case: Case, place: str, last: dict[str, date], own: dict[str, str]) -> list[Due]:
    """Return the tests that are due, by the code and by the person's own intervals.

    Inputs: the case with its day; the kind of place, or nothing; the last day of each test;
    own intervals by test, which stand before those of the code where they are shorter.
    """
    found = [*_by_code(case, place, last), *_by_own(case, last, own)]
    first: dict[str, Due] = {}
    for due in sorted(found, key=lambda one: one.day):
        first.setdefault(due.test, due)
    return list(first.values())


def _rules(case: Case) -> Iterable[Interval]:
    kind = "portable" if case.device.has(Ability.MOVED) else "fixed"
    rules = case.code.intervals_on(case.day)
    return [rule for rule in rules if rule.device in (kind, "any")]


def _by_code(case: Case, place: str, last: dict[str, date]) -> list[Due]:
    found = []
    for rule in _rules(case):
        every = parse_every(rule.every)
        if every is not None and rule.place in (place, ANY_PLACE):
            cited = rule.citation
            words = part("years.asked-by-code", document=cited.document, place=rule.place)
            found.append(_due(rule.test, every, last.get(rule.test), case, words, cited))
    return found


def _by_own(case: Case, last: dict[str, date], own: dict[str, str]) -> list[Due]:
    intervals = {test: parse_every(text) for test, text in own.items() if text}
    return [
        _due(test, every, last.get(test), case, part("years.own-interval"))
        for test, every in intervals.items()
        if every is not None
    ]


def _due(
    test: str,
    every: Every,
    last: date | None,
    case: Case,
    asked_by: str,
    *sources: Citation,
) -> Due:
    day = case.day if last is None else every.after(last)
    return Due(test, day, every, last, asked_by, sources)
