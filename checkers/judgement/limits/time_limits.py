"""Which break-time and non-actuating limits bind at a test current."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby

from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.judgement.case import Case
from checkers.judgement.limits.time_bounds import TOLERANCE, Bound, bounds_of, span_of, strictest

FIVE_TIMES, QUARTER_AMPERE = frozenset({"five-times"}), frozenset({"quarter-ampere"})


@dataclass(frozen=True, slots=True)
class TimeLimit:
    """The times [ms] that bind at a current, and the rows they come from.

    `at_most` and `at_least` are what the standard promises there: outside them it is broken.
    """

    most: Bound
    least: Bound
    option_decides: bool = False

    @property
    def at_most(self) -> float | None:
        """The greatest time that the device may take."""
        return self.most.fails

    @property
    def at_least(self) -> float | None:
        """The least time that the device must take."""
        return self.least.fails

    @property
    def upper_row(self) -> Row | None:
        """The row behind the greatest time."""
        return self.most.row

    @property
    def lower_row(self) -> Row | None:
        """The row behind the least time."""
        return self.least.row

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows behind the limit, each once."""
        found = (self.most.row, self.most.passes_row, self.least.row, self.least.passes_row)
        return tuple(dict.fromkeys(row for row in found if row is not None))


def product_time_limit(case: Case, waveform: str, current: float) -> TimeLimit:
    """Return the limit of the device's product standard at a test current [mA]."""
    return time_limit(time_rows(case, waveform), case, current)


def time_rows(case: Case, waveform: str) -> tuple[Row, ...]:
    """Return the rows of times of the device's product standard on a waveform."""
    return rows(
        "trip-time", on=case.day, made_to=case.made_to, waveform=waveform, **case.device_asked
    )


def time_limit(found: Iterable[Row], case: Case, current: float) -> TimeLimit:
    """Return the times that bind at a current, from rows for several currents.

    Inputs: the rows that apply to the device and waveform; the case; the test current [mA].
    Assumptions: more current never makes a device slower. So the greatest time of a row binds
    at every greater current and its least time at every smaller one; and between two rows that
    reading is surely in order which meets both. Each table speaks for itself. Where the maker
    declares the shortest time at a quarter of an ampere, the row at five times is not his.
    """
    listed = list(found)
    option = _option_decides(listed, case, current)
    if case.device.quarter_ampere:
        listed = [row for row in listed if row.when.only("option") != FIVE_TIMES]
    tables = groupby(sorted(listed, key=_table), _table)
    bounds = [bounds_of(tuple(one), case, current) for _, one in tables]
    return TimeLimit(
        most=strictest([most for most, _ in bounds], min),
        least=strictest([least for _, least in bounds], max),
        option_decides=option,
    )


def _table(row: Row) -> str:
    return row.table


def _option_decides(listed: Sequence[Row], case: Case, current: float) -> bool:
    """Tell whether the maker may prove the shortest time at a greater current than this."""
    kinds = {row.when.only("option"): span_of(row, case) for row in listed}
    five, quarter = kinds.get(FIVE_TIMES), kinds.get(QUARTER_AMPERE)
    if five is None or quarter is None:
        return False
    return five[0] <= current * (1 + TOLERANCE) and current * (1 + TOLERANCE) < quarter[0]
