"""What is asked of a device at a current: to hold, to trip and how fast, or neither."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import operating_band
from checkers.judgement.limits.time_bounds import TOLERANCE
from checkers.judgement.limits.time_limits import BindingTimes, product_times


class Must(StrEnum):
    """What a device must do at a current, whatever the test is called."""

    HOLD = "hold"
    TRIP = "trip"
    EITHER = "either"
    NOT_KNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Demand:
    """What a product standard asks at one current [mA] on one waveform, and the rows behind it."""

    must: Must
    current: float
    band: Limit | None
    time: BindingTimes

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows behind the demand, each once."""
        band = () if self.band is None else self.band.rows
        return tuple(dict.fromkeys((*self.time.rows, *band)))


def demand_at(case: Case, waveform: str, current: float) -> Demand:
    """Return what the device's product standard asks of it at a test current [mA]."""
    band = operating_band(case, waveform)
    time = product_times(case, waveform, current)
    return Demand(must_at(band, time, current), current, band, time)


def must_at(band: Limit | None, time: BindingTimes, current: float) -> Must:
    """Return what a band and the times that bind ask at a test current [mA]."""
    low = None if band is None else band.at_least
    high = None if band is None else band.at_most
    if low is not None and current <= low * (1 + TOLERANCE):
        return Must.HOLD
    timed = time.promised.at_most is not None
    if timed or (high is not None and current >= high * (1 - TOLERANCE)):
        return Must.TRIP
    return Must.NOT_KNOWN if low is None or high is None else Must.EITHER
