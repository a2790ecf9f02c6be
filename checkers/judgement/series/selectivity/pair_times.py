"""How long the lower of two devices may take, and the upper must hold, at a current."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from math import inf

from checkers.domain.codes.registry import Code
from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import Device, Form
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.judgement.case import Case
from checkers.judgement.electrode.disconnection import surest_time
from checkers.judgement.limits.current_bands import operating_band

HAIR = 1e-4
"""Share of a current by which a limit is approached from below or from above."""

UNDELAYED = frozenset({"none", "G"})


@dataclass(frozen=True, slots=True)
class PairTimes:
    """Times [ms] at a current [mA]: the lower opens within one, the upper holds for the other.

    A time is None where no table tells; `lower_holds` is how long the lower itself holds.
    `carried` tells that a delay stands in the tables at a smaller current only.
    """

    current: float
    opens_within: float | None
    holds_for: float | None
    carried: bool
    rows: tuple[Row, ...]
    lower_holds: float | None

    @property
    def proven(self) -> bool:
        """Whether the lower has opened before the upper may."""
        known = self.opens_within is not None and self.holds_for is not None
        return known and (self.holds_for or 0.0) >= (self.opens_within or 0.0)

    @property
    def disproven(self) -> bool:
        """Whether the upper may open while the lower must still hold."""
        if self.lower_holds is None or self.holds_for is None:
            return False
        return self.lower_holds > self.holds_for


@lru_cache(maxsize=4096)
def level_at(upper: Device, lower: Device, code: Code, day: date, current: float) -> PairTimes:
    """Return the times of two devices at a residual current [mA]."""
    below = surest_time(_case(lower, code, day), current)
    holds_for, carried, row = _holds_for(_case(upper, code, day), current)
    lower_holds, also_carried, held_row = _holds_for(_case(lower, code, day), current)
    rests = below.most.fails is None
    found = [one for one in (below.most.row, row, held_row if rests else None) if one is not None]
    return PairTimes(
        current=current,
        opens_within=below.most.fails,
        holds_for=holds_for,
        carried=carried or (rests and also_carried),
        rows=tuple(dict.fromkeys(found)),
        lower_holds=lower_holds,
    )


@lru_cache(maxsize=1024)
def proven_from(
    upper: Device, lower: Device, code: Code, day: date, current: float
) -> float | None:
    """Return the least current [mA] from which up to a given one the lower opens first.

    Result: None where that is not so at the given current itself.
    """
    if not level_at(upper, lower, code, day, current).proven:
        return None
    proven = current
    for step in sorted(_steps(upper, lower, day, current), reverse=True):
        above = step * (1 + HAIR)
        if above < current and not level_at(upper, lower, code, day, above).proven:
            return proven
        proven = step
    return proven


def _steps(upper: Device, lower: Device, day: date, current: float) -> Iterator[float]:
    """Yield the currents up to a given one at which a limit of either device changes."""
    for device in (upper, lower):
        for row in _rows(device, day):
            level = row.level(device.rated_residual_current)
            if level is not None and level <= current:
                yield level


def _holds_for(case: Case, current: float) -> tuple[float | None, bool, Row | None]:
    """Return how long a device must hold [ms], whether that is carried over, and its row.

    Below its band a device must not operate at all; in it, one without delay need not hold.
    A delay that its standard fixes at a smaller current only is taken to hold above it.
    """
    band = operating_band(case, "ac")
    if band is not None and band.at_least is not None and current < band.at_least:
        return inf, False, band.rows[0]
    least = surest_time(case, current).least
    if least.fails is not None:
        return least.fails, False, least.row
    if case.device.delay_class in UNDELAYED:
        return 0.0, False, None
    device = case.device
    held = [
        (row.at_least(device.rated_residual_current, device.set_delay), row)
        for row in _rows(device, case.day)
    ]
    known = [(time, row) for time, row in held if time is not None]
    if not known:
        return None, False, None
    time, row = min(known, key=lambda one: one[0])
    return time, True, row


def _rows(device: Device, day: date) -> tuple[Row, ...]:
    case = _case_of(device)
    return rows("trip-time", on=day, made_to=device.product_standard, waveform="ac", **case)


def _case(device: Device, code: Code, day: date) -> Case:
    return Case(_with_table(device), Circuit(), Instrument(), code, day)


def _case_of(device: Device) -> dict[str, object]:
    known = _with_table(device)
    return {
        "form": known.form,
        "delay": known.delay_class,
        "set_delay": known.set_delay,
        "rated": known.rated_residual_current,
    }


def _with_table(device: Device) -> Device:
    """Return the device as the tables know it: an adjustable delay is that of a breaker."""
    adjustable = device.set_delay is not None and device.has(Ability.HOUSEHOLD)
    return replace(device, form=Form.CBR) if adjustable else device
