"""One piece of connected equipment as it is asked about, and the type its circuit calls for."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.load_kinds import Also, Load, MetBy, Need, Separation
from checkers.domain.sources import Citation
from checkers.judgement.type_order import ORDER, covers, greatest, least

NO_DC = "no-dc"
SILENT = "silent"


@dataclass(frozen=True, slots=True)
class Equipment:
    """The equipment, its supply and separation, and what its maker says.

    `maker_says` is a device type, no-dc or silent; `detection` tells whether it holds 6 mA DC
    detection to IEC 62955, or is None where that is not said.
    """

    load: Load
    supply: str
    separation: str
    maker_says: str
    detection: bool | None

    @property
    def need(self) -> Need:
        """What its circuit calls for."""
        return self.load.need(self.supply, self.separation)

    @property
    def maker_type(self) -> str:
        """The device type its maker states, or nothing."""
        return self.maker_says if self.maker_says in ORDER else ""

    def meets(self, also: Also) -> bool | None:
        """Tell whether the condition of narrower types is met; None where that is not known."""
        if also.when == MetBy.SEPARATION:
            known = self.separation != Separation.UNKNOWN
            return self.separation == Separation.SIMPLE if known else None
        if also.when == MetBy.DETECTION and self.detection is not None:
            return self.detection
        if self.maker_says == NO_DC:
            return True
        return bool(self.maker_type) and covers(greatest(also.types), self.maker_type)

    @property
    def met(self) -> tuple[Also, ...]:
        """The conditions that are met."""
        return tuple(also for also in self.need.also if self.meets(also))

    @property
    def least_type(self) -> str:
        """The least type that serves, from its circuit, its maker and the conditions met."""
        base = least(least(also.types) for also in self.met) if self.met else self.need.type
        return greatest([base, self.maker_type]) if self.maker_type else base

    @property
    def smooth_dc(self) -> float:
        """The most smooth DC [mA] it can leave on its device unseen; may be infinite."""
        return self.need.smooth_dc_met if self.met else self.need.smooth_dc

    @property
    def smooth_dc_source(self) -> Citation:
        """Where that stands."""
        return self.need.smooth_dc_met_source if self.met else self.need.smooth_dc_source

    @property
    def contradicted(self) -> bool:
        """Whether its maker states less than its circuit calls for, with no condition to do so."""
        if self.met or self.maker_says == SILENT:
            return False
        stated = self.maker_type or "A"
        return not covers(stated, self.need.type)
