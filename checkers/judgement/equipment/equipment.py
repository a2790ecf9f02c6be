"""One piece of connected equipment as it is asked about, and the type its circuit calls for."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.loads.kinds import Also, Load, MetBy, Need, Separation
from checkers.domain.sources.documents import Citation
from checkers.judgement.equipment.dc_by_statement import promised_by
from checkers.judgement.equipment.type_order import ORDER, covers, greatest, least

NO_DC = "no-dc"
SILENT = "silent"


@dataclass(frozen=True, slots=True)
class Equipment:
    """The equipment, its supply and separation, and what is said of it.

    `maker_says` is a device type, no-dc or silent; `detection` tells whether it holds 6 mA DC
    detection to IEC 62955, `condition` whether the further condition holds that its entry
    names: each is None where that is not said. `declared` is the smooth DC [mA] that its
    maker declares, or None.
    """

    load: Load
    supply: str
    separation: str
    maker_says: str
    detection: bool | None
    condition: bool | None = None
    declared: float | None = None

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
        if also.when == MetBy.DETECTION:
            return self.detection
        stated = self._states(also)
        if stated is False or not also.besides:
            return stated
        return stated if self.condition else self.condition

    def _states(self, also: Also) -> bool | None:
        """Tell whether its maker states one of the types; None where it speaks of DC alone."""
        if self.maker_says == NO_DC:
            return True if also.when == MetBy.DECLARATION else None
        return self.maker_type in also.types

    def lets_serve(self, also: Also, kind: str) -> bool | None:
        """Tell whether a condition lets a type serve; None where that is not known.

        Up to 6 mA of smooth DC, and any pulsating DC, may flow where no more is stated: that
        leaves no room for a type AC.
        """
        alone = self.maker_says == NO_DC and kind not in ORDER[1:]
        return False if kind not in also.types or alone else self.meets(also)

    @property
    def met(self) -> tuple[Also, ...]:
        """The conditions that are met."""
        return tuple(also for also in self.need.also if self.meets(also))

    @property
    def undecided(self) -> bool:
        """Whether a condition is open that could let a narrower type serve."""
        return any(self.meets(also) is None for also in self.need.also)

    @property
    def least_type(self) -> str:
        """The least type that serves, from its circuit, its maker and the conditions met."""
        base = least(least(also.types) for also in self.met) if self.met else self.need.type
        return greatest([base, self.maker_type]) if self.maker_type else base

    @property
    def promise(self) -> tuple[float, Citation] | None:
        """What a statement of a type promises [mA], and where that stands; None without one."""
        stated = any(self.maker_type in also.types and self._states(also) for also in self.met)
        return promised_by(self.maker_type) if stated else None

    @property
    def smooth_dc(self) -> float:
        """The most smooth DC [mA] it can leave on its device unseen; may be infinite."""
        if self.promise:
            return self.promise[0]
        return self.need.smooth_dc_met if self.met else self.need.smooth_dc

    @property
    def smooth_dc_source(self) -> Citation:
        """Where that stands."""
        if self.promise:
            return self.promise[1]
        return self.need.smooth_dc_met_source if self.met else self.need.smooth_dc_source

    @property
    def contradicted(self) -> bool:
        """Whether its maker states less than its circuit calls for, which nothing here foresees."""
        if self.met or self.undecided or self.maker_says == SILENT:
            return False
        stated = self.maker_type or "A"
        if any(stated in also.types and also.when != MetBy.SEPARATION for also in self.need.also):
            return False
        return not covers(stated, self.need.type)

    @property
    def asks_for_detection(self) -> bool:
        """Whether 6 mA detection is one of the ways in which a narrower type serves it."""
        return any(also.when == MetBy.DETECTION for also in self.need.also)
