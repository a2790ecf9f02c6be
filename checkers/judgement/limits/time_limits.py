"""Which break-time and non-actuating limits bind at a test current."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby

from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Judges
from checkers.judgement.case import Case
from checkers.judgement.limits.time_bounds import TOLERANCE, TimeEnd, bounds_of, span_of, strictest

FIVE_TIMES, QUARTER_AMPERE = frozenset({"five-times"}), frozenset({"quarter-ampere"})


@dataclass(frozen=True, slots=True)
class BindingTimes:
    """The times [ms] that bind at a current, whose they are, and what asks for them besides.

    At a current that the tables name the two limits are one. Between two rows they differ: a
    time outside `promised` is not in order, and only one inside `sure` is. `option_at` is the
    greater current [mA] at which the maker may prove the shortest time in place of this one.
    """

    most: TimeEnd
    least: TimeEnd
    option_at: float | None = None
    judges: Judges = Judges.DEVICE_STANDARD
    asked_by: tuple[Citation, ...] = ()

    @property
    def promised(self) -> Limit:
        """What the standard promises there: outside it, it is broken."""
        return self._limit(self.least.fails, self.most.fails)

    @property
    def sure(self) -> Limit | None:
        """What every row near the current asks, or None where no row says enough for a pass."""
        if self.most.passes is None:
            return None
        return self._limit(self.least.passes, self.most.passes)

    @property
    def decides(self) -> bool:
        """Whether one greatest time both passes and fails, or none is known at all."""
        return self.most.passes == self.most.fails

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows behind the times, each once."""
        found = (self.most.row, self.most.passes_row, self.least.row, self.least.passes_row)
        return tuple(dict.fromkeys(row for row in found if row is not None))

    def _limit(self, at_least: float | None, at_most: float | None) -> Limit:
        return Limit("ms", at_least, at_most, self.rows, self.judges, self.asked_by)


def product_times(case: Case, waveform: str, current: float) -> BindingTimes:
    """Return the times of the device's product standard at a test current [mA]."""
    return binding_times(time_rows(case, waveform), case, current)


def time_rows(case: Case, waveform: str) -> tuple[Row, ...]:
    """Return the rows of times of the device's product standard on a waveform."""
    return rows(
        "trip-time", on=case.day, made_to=case.made_to, waveform=waveform, **case.device_asked
    )


def binding_times(found: Iterable[Row], case: Case, current: float) -> BindingTimes:
    """Return the times that bind at a current, from rows for several currents.

    Inputs: the rows that apply to the device and waveform; the case; the test current [mA].
    Assumptions: more current never makes a device slower. So the greatest time of a row binds
    at every greater current and its least time at every smaller one; and between two rows that
    reading is surely in order which meets both. Each table speaks for itself. Where the maker
    declares the shortest time at a quarter of an ampere, the row at five times is not his.
    """
    listed = list(found)
    option = _option_at(listed, case, current)
    if case.device.quarter_ampere:
        listed = [row for row in listed if row.when.only("option") != FIVE_TIMES]
    tables = groupby(sorted(listed, key=_table), _table)
    bounds = [bounds_of(tuple(one), case, current) for _, one in tables]
    return BindingTimes(
        most=strictest([most for most, _ in bounds], min),
        least=strictest([least for _, least in bounds], max),
        option_at=option,
    )


def _table(row: Row) -> str:
    return row.table


def _option_at(listed: Sequence[Row], case: Case, current: float) -> float | None:
    """Return the greater current at which the maker may prove the shortest time, or None."""
    kinds = {row.when.only("option"): span_of(row, case) for row in listed}
    five, quarter = kinds.get(FIVE_TIMES), kinds.get(QUARTER_AMPERE)
    if five is None or quarter is None:
        return None
    between = five[0] <= current * (1 + TOLERANCE) < quarter[0]
    return quarter[0] if between else None
