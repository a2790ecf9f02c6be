"""The residual currents that real faults give below two devices in series."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device
from checkers.domain.limits.rows import citations
from checkers.domain.limits.tables import rows_in
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.judgement.limits.safe_rounding import rounded_down
from checkers.wording.book import part

TN = "tn"
DIGITS = 4


@dataclass(frozen=True, slots=True)
class Supply:
    """What decides the fault current: the system, a resistance [ohm] if known, U0 [V]."""

    system: str
    resistance: float | None
    line_voltage: float
    code: Code
    day: date


@dataclass(frozen=True, slots=True)
class RealFault:
    """The current [mA] of a fault to earth, in words where from, and its source."""

    current: float
    origin: str
    sources: tuple[Citation, ...] = ()


def real_fault(supply: Supply, upper: Device) -> RealFault | None:
    """Return the current of a real fault, for the device above of two; None if it is unknown.

    With a resistance it is U0 over it. Without one: in TN amperes, and above five times the
    rating; in TT what the greatest electrode allowed for the upper device lets through.
    """
    if supply.resistance is not None:
        current = rounded_down(1000 * supply.line_voltage / supply.resistance, DIGITS)
        return RealFault(current, part("series.over-resistance"))
    if supply.system == TN:
        known = CONSTANTS["earth_fault_in_tn"]
        return RealFault(known.value, part("series.fault-in-tn"), (known.citation,))
    return _over_the_greatest_electrode(supply, upper)


def _over_the_greatest_electrode(supply: Supply, upper: Device) -> RealFault | None:
    table = supply.code.tables.get("touch-voltage")
    found = rows_in(table, on=supply.day, supply="ac") if table else ()
    touch = found[0].at_most() if found else None
    if touch is None or upper.rated_residual_current is None:
        return None
    current = rounded_down(supply.line_voltage / touch * upper.rated_residual_current, DIGITS)
    return RealFault(current, part("series.fault-in-tt"), citations(found[0]))
