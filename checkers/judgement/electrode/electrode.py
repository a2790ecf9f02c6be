"""An earth electrode or loop with its device: touch voltages and greatest resistances."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows_in
from checkers.domain.sources.constants import CONSTANTS, Constant
from checkers.domain.verdicts import Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import operating_band

SPECIAL_PLACE = 25.0


@dataclass(frozen=True, slots=True)
class Electrode:
    """What is known of an electrode or loop: resistances [ohm], voltages [V], and the device."""

    case: Case
    resistance: float | None
    stated_uncertainty: float | None
    system: str
    circuit: str
    line_voltage: float
    wanted_limit: float | None
    in_the_cold: bool

    @property
    def rated(self) -> float | None:
        """The rated residual current of the device [mA], or None."""
        return self.case.device.rated_residual_current

    @property
    def ac_row(self) -> Row | None:
        """The code's limit of the touch voltage for AC, or None where it has none here."""
        return self._row("ac")

    @property
    def dc_row(self) -> Row | None:
        """The code's limit of the touch voltage for DC, or None where it has none here."""
        return self._row("dc")

    @property
    def ac_limit(self) -> float | None:
        """The touch voltage [V] that may stay: the code's limit, or a lower one asked for."""
        known = [one for one in (_value(self.ac_row), self.wanted_limit) if one is not None]
        return min(known, default=None)

    @property
    def dc_limit(self) -> float | None:
        """The DC touch voltage [V] that may stay, lowered in step with the one for AC."""
        ac, dc, wanted = _value(self.ac_row), _value(self.dc_row), self.wanted_limit
        if ac is None or dc is None or wanted is None:
            return dc
        return dc * min(1.0, wanted / ac)

    @property
    def dc_band(self) -> Limit | None:
        """The smooth DC at which the device operates, or None where it need not."""
        senses = self.case.device.senses_smooth_dc and self.rated is not None
        return operating_band(self.case, "smooth-dc") if senses else None

    def uncertainty(self, limit: float, to: Outcome) -> float:
        """Return the expanded uncertainty [ohm] near a limit [ohm], to pass or to fail with.

        Where none is stated, a pass must hold for the least exact instrument that the
        instrument standard permits, and a failure for an ordinary one.
        """
        if self.stated_uncertainty is not None:
            return self.stated_uncertainty
        return limit * default_uncertainty(to).value / 100

    def _row(self, supply: str) -> Row | None:
        table = self.case.code.tables.get("touch-voltage")
        found = rows_in(table, on=self.case.day, supply=supply) if table else ()
        return found[0] if found else None


def default_uncertainty(to: Outcome) -> Constant:
    """Return the uncertainty [%] that a pass, or a failure, must hold for."""
    passes = to is Outcome.PASS
    return CONSTANTS["electrode_uncertainty_permitted" if passes else "electrode_uncertainty_usual"]


def touch_voltage(resistance: float, current: float) -> float:
    """Return the touch voltage [V] that a current [mA] makes over a resistance [ohm].

    Source: [1] IEC 60364-4-41:2005 with A1:2017, 411.5.3.
    """
    return resistance * current / 1000


def greatest_resistance(limit: float, current: float) -> float:
    """Return the resistance [ohm] at which a current [mA] makes the limit [V].

    Source: [1] IEC 60364-4-41:2005 with A1:2017, 411.5.3.
    """
    return 1000 * limit / current


def _value(row: Row | None) -> float | None:
    return None if row is None else row.at_most()
