"""Refuse a code whose rules overlap in time, or whose editions leave days between them."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from datetime import date
from itertools import combinations, pairwise
from typing import TypeVar

from checkers.domain.codes.rules import Code, CodeTest, Edition, Interval, Rule, TypeRule
from checkers.domain.errors import DataError

Kind = TypeVar("Kind", bound=Rule)


def refuse_clashes(file: str, code: Code) -> None:
    """Raise DataError where two rules of a kind say the same thing twice for one day."""
    for one, other in _clashes(code.editions, _edition):
        raise DataError(file, f"edition {other}", f"is in force on the same day as edition {one}")
    for one, other in _clashes(code.tests, _test):
        raise DataError(file, f"test {other}", f"is the same test as test {one} on the same day")
    for one, other in _clashes(code.type_rules, _type_rule):
        raise DataError(file, f"type_rule {other}", f"repeats type_rule {one} on the same day")
    for one, other in _clashes(code.intervals, _interval):
        raise DataError(file, f"interval {other}", f"repeats interval {one} on the same day")
    _refuse_days_without_edition(file, code.editions)


def _edition(edition: Edition) -> Hashable:
    """Return what tells an edition from others in force beside it: its document."""
    return edition.document


def _test(test: CodeTest) -> Hashable:
    """Return what tells one test from another."""
    device = (test.types, test.forms, test.delays, test.rated_up_to)
    return test.test, test.multiple, test.waveform, test.purpose, device


def _type_rule(rule: TypeRule) -> Hashable:
    """Return what tells one rule on types from another."""
    return rule.types, rule.standing, rule.loads, rule.where


def _interval(interval: Interval) -> Hashable:
    """Return what tells one interval from another."""
    return interval.test, interval.place, interval.device


def _clashes(rules: Sequence[Kind], of: Callable[[Kind], Hashable]) -> Iterator[tuple[int, int]]:
    """Yield the numbers of two rules that are alike and in force on the same day."""
    for (first, one), (second, other) in combinations(enumerate(rules, start=1), 2):
        if of(one) == of(other) and _start(one) < _end(other) and _start(other) < _end(one):
            yield first, second


def _start(rule: Rule) -> date:
    """Return a rule's first day."""
    return rule.from_day or date.min


def _end(rule: Rule) -> date:
    """Return the first day a rule no longer holds."""
    return rule.until_day or date.max


def _refuse_days_without_edition(file: str, editions: Sequence[Edition]) -> None:
    """Raise where an edition of a document ends, and the next starts only some days later."""
    numbered = sorted(
        enumerate(editions, start=1), key=lambda one: (one[1].document, _start(one[1]))
    )
    for (first, one), (second, other) in pairwise(numbered):
        if one.document == other.document and one.until_day != other.from_day:
            raise DataError(
                file, f"edition {second}", f"leaves a gap in days after edition {first}"
            )
