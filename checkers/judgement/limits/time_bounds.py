"""What one table of times says at a test current: to fail, and to pass."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import inf

from checkers.domain.limits.rows import Row
from checkers.judgement.case import Case

TOLERANCE = 1e-6


_Spans = Sequence[tuple[Row, tuple[float, float]]]


@dataclass(frozen=True, slots=True)
class TimeEnd:
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


def span_of(row: Row, case: Case) -> tuple[float, float] | None:
    """Return the least and the greatest test current [mA] a row speaks of, if they are known."""
    if row.formula:
        return min(one.over.low for one in row.formula), max(one.over.high for one in row.formula)
    level = row.level(case.device.rated_residual_current)
    if level is None:
        return None
    return level, max(level, row.when.highest or level)


def bounds_of(found: Sequence[Row], case: Case, current: float) -> tuple[TimeEnd, TimeEnd]:
    """Return the greatest and the least time of one table at a test current [mA]."""
    spans = [(row, span) for row in found if (span := span_of(row, case)) is not None]
    low, high = current * (1 - TOLERANCE), current * (1 + TOLERANCE)
    here = any(span[0] <= high and span[1] >= low for _, span in spans)
    below = [one for one in spans if one[1][0] <= high]
    above = [one for one in spans if one[1][0] > high]
    most = _most(below, above, here=here, case=case, current=current)
    return most, _least(spans, case, low, here=here)


def _most(below: _Spans, above: _Spans, *, here: bool, case: Case, current: float) -> TimeEnd:
    """Return the greatest time: that at less current to fail, that at more current to pass."""
    known = [
        (time, row, span[0])
        for row, span in below
        if (time := _at_most(row, case, min(current, span[1]))) is not None
    ]
    if not known:
        return TimeEnd()
    fails, row, held = min(known, key=lambda one: one[0])
    if here:
        return TimeEnd(fails, fails, row, row, held, held)
    nearest = min((span[0] for _, span in above), default=inf)
    dues = [
        (time, row)
        for row, span in above
        if span[0] == nearest and (time := _at_most(row, case, nearest)) is not None
    ]
    if not dues:
        return TimeEnd(fails, None, row, None, held)
    passes, due_row = min(dues, key=lambda one: one[0])
    return TimeEnd(fails, min(passes, fails), row, due_row, held, nearest)


def _least(spans: _Spans, case: Case, low: float, *, here: bool) -> TimeEnd:
    """Return the least time: that at more current to fail, that at less current to pass."""
    above = [
        (time, row, span[0])
        for row, span in spans
        if span[1] >= low and (time := _at_least(row, case)) is not None
    ]
    fails, row, held = max(above, key=lambda one: one[0], default=(None, None, None))
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
    return TimeEnd(fails, passes, row, due_row, held, nearest if dues else held)


def strictest(bounds: Sequence[TimeEnd], stricter: Callable[[Iterable[float]], float]) -> TimeEnd:
    """Return the strictest of what several tables say of one end."""
    said = [one for one in bounds if one.row is not None or one.passes is not None]
    if len(said) <= 1:
        return said[0] if said else TimeEnd()
    failing = [one for one in said if one.fails is not None]
    passing = [one for one in said if one.passes is not None]
    fails = stricter(one.fails for one in failing if one.fails is not None) if failing else None
    passes = stricter(one.passes for one in passing if one.passes is not None) if passing else None
    left_open = len(passing) < len(said)
    behind = next((one for one in failing if one.fails == fails), said[0])
    due = next((one for one in passing if one.passes == passes), said[0])
    return TimeEnd(
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
