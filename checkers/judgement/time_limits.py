"""Which break-time and non-actuating limits bind at a test current."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import inf

from checkers.domain.limit_rows import Row
from checkers.domain.limits import rows
from checkers.judgement.case import Case

TOLERANCE = 1e-6
FIVE_TIMES, QUARTER_AMPERE = frozenset({"five-times"}), frozenset({"quarter-ampere"})


@dataclass(frozen=True, slots=True)
class Bound:
    """One end of a time limit [ms]: beyond `fails` no reading is in order, up to `passes` each is.

    They are one figure at a current that the tables name. Between two rows, and beyond the last,
    they differ: `passes` is None where no row says enough for a pass. `due` is the current [mA]
    of the row behind `passes`, and `held` that of the row behind `fails`.
    """

    fails: float | None = None
    passes: float | None = None
    row: Row | None = None
    passes_row: Row | None = None
    held: float | None = None
    due: float | None = None


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


NO_TIME = TimeLimit(Bound(), Bound())


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
    tables = [_of_table(tuple(one), case, current) for _, one in groupby(_by_table(listed), _table)]
    return TimeLimit(
        most=_strictest([one.most for one in tables], min),
        least=_strictest([one.least for one in tables], max),
        option_decides=option,
    )


def _table(row: Row) -> str:
    return row.table


def _by_table(listed: Iterable[Row]) -> list[Row]:
    return sorted(listed, key=_table)


def _option_decides(listed: Sequence[Row], case: Case, current: float) -> bool:
    """Tell whether the maker may prove the shortest time at a greater current than this."""
    kinds = {row.when.only("option"): _span(row, case) for row in listed}
    five, quarter = kinds.get(FIVE_TIMES), kinds.get(QUARTER_AMPERE)
    if five is None or quarter is None:
        return False
    return five[0] <= current * (1 + TOLERANCE) and current * (1 + TOLERANCE) < quarter[0]


def _span(row: Row, case: Case) -> tuple[float, float] | None:
    """Return the least and the greatest test current [mA] a row speaks of, if they are known."""
    if row.formula:
        return min(one.over.low for one in row.formula), max(one.over.high for one in row.formula)
    level = row.level(case.device.rated_residual_current)
    if level is None:
        return None
    return level, max(level, row.when.highest or level)


def _of_table(found: Sequence[Row], case: Case, current: float) -> TimeLimit:
    """Return what one table says at a current."""
    spans = [(row, span) for row in found if (span := _span(row, case)) is not None]
    low, high = current * (1 - TOLERANCE), current * (1 + TOLERANCE)
    return TimeLimit(
        most=_most(
            below=[(row, span) for row, span in spans if span[0] <= high],
            above=[(row, span) for row, span in spans if span[0] > high],
            here=any(span[0] <= high and span[1] >= low for _, span in spans),
            case=case,
            current=current,
        ),
        least=_least(spans, case, low, high),
    )


_Spans = Sequence[tuple[Row, tuple[float, float]]]


def _most(below: _Spans, above: _Spans, *, here: bool, case: Case, current: float) -> Bound:
    """Return the greatest time: that at less current to fail, that at more current to pass."""
    known = [
        (time, row, span[0])
        for row, span in below
        if (time := _at_most(row, case, min(current, span[1]))) is not None
    ]
    if not known:
        return Bound()
    fails, row, held = min(known, key=lambda one: one[0])
    if here:
        return Bound(fails, fails, row, row, held, held)
    nearest = min((span[0] for _, span in above), default=inf)
    dues = [
        (time, row)
        for row, span in above
        if span[0] == nearest and (time := _at_most(row, case, nearest)) is not None
    ]
    if not dues:
        return Bound(fails, None, row, None, held)
    passes, due_row = min(dues, key=lambda one: one[0])
    return Bound(fails, min(passes, fails), row, due_row, held, nearest)


def _least(spans: _Spans, case: Case, low: float, high: float) -> Bound:
    """Return the least time: that at more current to fail, that at less current to pass."""
    above = [
        (time, row, span[0])
        for row, span in spans
        if span[1] >= low and (time := _at_least(row, case)) is not None
    ]
    fails, row, held = max(above, key=lambda one: one[0], default=(None, None, None))
    here = any(span[0] <= high and span[1] >= low for _, span in spans)
    below = [] if here else [one for one in spans if one[1][1] < low]
    nearest = max((span[1] for _, span in below), default=None)
    dues = [
        (time, row)
        for row, span in below
        if span[1] == nearest and (time := _at_least(row, case)) is not None
    ]
    passes, due_row = max(dues, key=lambda one: one[0], default=(fails, row))
    if passes is None or (fails is not None and fails > passes):
        passes, due_row = fails, row
    return Bound(fails, passes, row, due_row, held, nearest if dues else held)


def _strictest(bounds: Sequence[Bound], stricter: Callable[[Iterable[float]], float]) -> Bound:
    """Return the strictest of what several tables say of one end."""
    said = [one for one in bounds if one.row is not None or one.passes is not None]
    if len(said) <= 1:
        return said[0] if said else Bound()
    failing = [one for one in said if one.fails is not None]
    passing = [one for one in said if one.passes is not None]
    fails = stricter(one.fails for one in failing if one.fails is not None) if failing else None
    passes = stricter(one.passes for one in passing if one.passes is not None) if passing else None
    left_open = len(passing) < len(said)
    behind = next((one for one in failing if one.fails == fails), said[0])
    due = next((one for one in passing if one.passes == passes), said[0])
    return Bound(
        fails,
        None if left_open else passes,
        behind.row,
        None if left_open else due.passes_row,
        behind.held,
        due.due,
    )


def _at_most(row: Row, case: Case, current: float) -> float | None:
    device = case.device
    return row.at_most(device.rated_residual_current, device.set_delay, current)


def _at_least(row: Row, case: Case) -> float | None:
    return row.at_least(case.device.rated_residual_current, case.device.set_delay)
