"""What is asked of a device at a current: to hold, to trip and how fast, or neither."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from checkers.domain.limits.rows import Row
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import Band, operating_band
from checkers.judgement.limits.time_bounds import TOLERANCE
from checkers.judgement.limits.time_limits import TimeLimit, product_time_limit


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
    band: Band | None
    time: TimeLimit

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows behind the demand, each once."""
        band = () if self.band is None else (self.band.row,)
        return tuple(dict.fromkeys((*self.time.rows, *band)))


def demand_at(case: Case, waveform: str, current: float) -> Demand:
    """Return what the device's product standard asks of it at a test current [mA]."""
    band = operating_band(case, waveform)
    time = product_time_limit(case, waveform, current)
    return Demand(must_at(band, time, current), current, band, time)


def must_at(band: Band | None, time: TimeLimit, current: float) -> Must:
    """Return what a band and the times that bind ask at a test current [mA]."""
    low = None if band is None else band.at_least
    high = None if band is None else band.at_most
    if low is not None and current <= low * (1 + TOLERANCE):
        return Must.HOLD
    if time.at_most is not None or (high is not None and current >= high * (1 - TOLERANCE)):
        return Must.TRIP
    return Must.NOT_KNOWN if low is None or high is None else Must.EITHER
