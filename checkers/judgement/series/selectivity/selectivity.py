"""Does the lower of two devices in series open before the upper one?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from checkers.domain.device.device import Device
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows_in
from checkers.domain.verdicts import Outcome
from checkers.judgement.series.arrangement import Arrangement
from checkers.judgement.series.selectivity.fault_levels import RealFault, Supply, real_fault
from checkers.judgement.series.selectivity.pair_times import (
    UNDELAYED,
    PairTimes,
    level_at,
    proven_from,
)

HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class Selectivity:
    """How two devices stand to each other: ratio, delay, and the times at a real fault.

    `selective` is None where ratings or times do not tell. `meant` tells whether the upper is
    delayed, which is done for no other reason. `from_current` [mA] is the least current from
    which up to the real fault the lower opens first.
    """

    ratio: float | None
    least_ratio: float | None
    ratio_row: Row | None
    meant: bool
    fault: RealFault | None
    level: PairTimes | None
    from_current: float | None

    @property
    def ratio_kept(self) -> bool | None:
        """Whether the ratio is kept; None where it cannot be told."""
        if self.ratio is None or self.least_ratio is None:
            return None
        return self.ratio >= self.least_ratio - HAIR

    @property
    def times_known(self) -> bool:
        """Whether the tables give both times at the real fault."""
        level = self.level
        return level is not None and None not in (level.opens_within, level.holds_for)

    @property
    def disproven(self) -> bool:
        """Whether the upper may open while the lower must still hold, whatever else is known."""
        return self.level is not None and self.level.disproven

    @property
    def selective(self) -> bool | None:
        """Whether the lower opens first: by ratio and by time."""
        proven = self.level.proven if self.level is not None and self.times_known else None
        if False in (self.ratio_kept, proven) or self.disproven:
            return False
        return None if None in (self.ratio_kept, proven) else True

    def outcome(self, wanted: bool | None) -> Outcome:
        """Return the outcome: a failure only where it was to be selective.

        Inputs: wanted, whether it was to be; None where nobody said, and the delay tells.
        """
        if self.selective:
            return Outcome.PASS
        to_be = self.meant if wanted is None else wanted
        return Outcome.FAIL if self.selective is False and to_be else Outcome.CANNOT_SAY


@lru_cache(maxsize=1024)
def selectivity(upper: Device, lower: Device, supply: Supply) -> Selectivity:
    """Return how two devices in series stand to each other, for the faults of a supply."""
    code, day = supply.code, supply.day
    row = _ratio_row(supply)
    fault = real_fault(supply, upper)
    rated = (upper.rated_residual_current, lower.rated_residual_current)
    known = fault is not None and None not in rated
    at = (upper, lower, code, day, fault.current) if known and fault is not None else None
    return Selectivity(
        ratio=_ratio(*rated),
        least_ratio=row.at_least() if row else None,
        ratio_row=row,
        meant=upper.delay_class not in UNDELAYED,
        fault=fault,
        level=level_at(*at) if at else None,
        from_current=proven_from(*at) if at else None,
    )


def pairs(arrangement: Arrangement) -> Iterator[tuple[int, int]]:
    """Yield the places of each two devices in series that protect, the upper first."""
    devices = arrangement.devices
    for lower, device in enumerate(devices):
        if device.is_rcd:
            above = arrangement.above([lower])
            yield from ((upper, lower) for upper in above if devices[upper].is_rcd)


def _ratio(upper: float | None, lower: float | None) -> float | None:
    return None if upper is None or lower is None else upper / lower


def _ratio_row(supply: Supply) -> Row | None:
    table = supply.code.tables.get("selectivity-ratio")
    found = rows_in(table, on=supply.day) if table else ()
    return found[0] if found else None
