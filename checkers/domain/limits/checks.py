"""Refuse a limit table whose rows overlap, or leave a gap between them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Sequence
from datetime import date
from itertools import combinations, pairwise

from checkers.domain.errors import DataError
from checkers.domain.limits.conditions import RANGES, dc_of, level_of, together
from checkers.domain.limits.rows import Row


def refuse_gaps_and_overlaps(file: str, rows: Sequence[Row]) -> None:
    """Raise DataError where two rows answer one question, or a value between has no row."""
    _refuse_overlaps(file, rows)
    for name in RANGES:
        _refuse_range_gaps(file, rows, name, by_level=True)
        _refuse_range_gaps(file, rows, name, by_level=False)
    _refuse_day_gaps(file, rows)


def _name(row: Row) -> str:
    """Return what an error calls a row."""
    return f"row {row.number}"


def _refuse_overlaps(file: str, rows: Sequence[Row]) -> None:
    """Raise where two rows could both answer one question on one day."""
    for one, other in combinations(rows, 2):
        if together(one.when, other.when) and _share_a_day(one, other):
            raise DataError(file, _name(other), f"overlaps {_name(one)}")


def _share_a_day(one: Row, other: Row) -> bool:
    """Tell whether two rows are in force on the same day."""
    start = max(one.from_day or date.min, other.from_day or date.min)
    return start < min(one.until_day or date.max, other.until_day or date.max)


def _rest(row: Row, name: str, by_level: bool) -> Hashable:
    """Return everything a row is conditional on, except one range."""
    return (
        frozenset(row.when.choices.items()),
        frozenset((key, value) for key, value in row.when.ranges.items() if key != name),
        dc_of(row.when),
        level_of(row.when) if by_level else None,
    )


def _refuse_range_gaps(file: str, rows: Sequence[Row], name: str, by_level: bool) -> None:
    """Raise where rows that differ only in one range leave values out between them."""
    groups = defaultdict(list)
    for row in rows:
        if name in row.when.ranges:
            groups[_rest(row, name, by_level)].append(row)
    for group in groups.values():
        group.sort(key=lambda row: (row.when.ranges[name].low, row.when.ranges[name].high))
        reach = group[0].when.ranges[name]
        for row in group[1:]:
            interval = row.when.ranges[name]
            if not reach.touches(interval):
                raise DataError(file, _name(row), f"leaves a gap in {name} before it")
            reach = max(reach, interval, key=lambda one: (one.high, one.high_inside))


def _refuse_day_gaps(file: str, rows: Sequence[Row]) -> None:
    """Raise where a row ends, and its successor starts only some days later."""
    groups = defaultdict(list)
    for row in rows:
        ranges = frozenset(row.when.ranges.items())
        groups[_rest(row, "", by_level=True), ranges].append(row)
    for group in groups.values():
        group.sort(key=lambda row: row.from_day or date.min)
        for earlier, later in pairwise(group):
            if earlier.until_day != later.from_day:
                raise DataError(file, _name(later), f"leaves a gap in days after {_name(earlier)}")
