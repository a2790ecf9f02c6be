"""Which break-time and non-actuating limits bind at a test current."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from checkers.domain.limit_rows import Row
from checkers.domain.limits import rows
from checkers.judgement.case import Case

TOLERANCE = 1e-6
QUARTER_AMPERE = frozenset({"quarter-ampere"})


@dataclass(frozen=True, slots=True)
class TimeLimit:
    """The times [ms] that bind at a current, and the rows they come from."""

    at_most: float | None
    at_least: float | None
    upper_row: Row | None
    lower_row: Row | None
    option_decides: bool = False

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows behind the limit, each once."""
        found = [row for row in (self.upper_row, self.lower_row) if row is not None]
        return tuple(dict.fromkeys(found))


def product_time_limit(case: Case, waveform: str, current: float) -> TimeLimit:
    """Return the limit of the device's product standard at a test current [mA]."""
    found = rows(
        "trip-time", on=case.day, made_to=case.made_to, waveform=waveform, **case.device_asked
    )
    return time_limit(found, case, current)


def time_limit(found: Iterable[Row], case: Case, current: float) -> TimeLimit:
    """Return the times that bind at a current, from rows for several currents.

    Inputs: the rows that apply to the device and waveform; the case; the test current [mA].
    Assumption: more current never makes a device slower, so the greatest time of
    the next lower tabulated current binds, and the least time of the next higher one.
    """
    listed = [row for row in found if row.when.only("option") != QUARTER_AMPERE]
    quarter = len(listed) < len(list(found))
    upper = _upper(listed, case, current)
    lower = _lower(listed, case, current)
    return TimeLimit(
        at_most=_at_most(upper, case, current),
        at_least=_at_least(lower, case),
        upper_row=upper,
        lower_row=lower,
        option_decides=quarter and upper is not None and upper.when.only("option") is not None,
    )


def _upper(found: Iterable[Row], case: Case, current: float) -> Row | None:
    """Return the row with the shortest greatest time among those at or below the current."""
    reached = [
        row
        for row in found
        if _at_most(row, case, current) is not None
        and _level(row, case, current) <= current * (1 + TOLERANCE)
    ]
    return min(reached, key=lambda row: _at_most(row, case, current) or 0.0, default=None)


def _lower(found: Iterable[Row], case: Case, current: float) -> Row | None:
    """Return the row with the longest least time among those at or above the current."""
    above = [
        row
        for row in found
        if _at_least(row, case) is not None
        and _level(row, case, current) >= current * (1 - TOLERANCE)
    ]
    return max(above, key=lambda row: _at_least(row, case) or 0.0, default=None)


def _level(row: Row, case: Case, current: float) -> float:
    level = row.level(case.device.rated_residual_current)
    return current if level is None else level


def _at_most(row: Row | None, case: Case, current: float) -> float | None:
    if row is None:
        return None
    device = case.device
    return row.at_most(device.rated_residual_current, device.set_delay, current)


def _at_least(row: Row | None, case: Case) -> float | None:
    if row is None:
        return None
    return row.at_least(case.device.rated_residual_current, case.device.set_delay)
