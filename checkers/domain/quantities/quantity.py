"""Quantities as people type them, turned into numbers in the unit the code computes in.

The units computed in are ms, mA, ohm, V, Hz, W, degree, percent, µF and mH.
"""

from __future__ import annotations

from math import inf

from checkers.domain.errors import quoted
from checkers.domain.quantities.typed_numbers import NotAQuantity, split_number, tidy
from checkers.domain.tables.glossary import QUANTITIES, SPELLINGS, UNITS, Quantity, Unit

LARGER = {"ms": ("s", 2000.0), "mA": ("A", 1000.0)}
"""The unit a thousand times as large, and the value from which it is written everywhere.

Instruments count to 1999 ms, which nobody writes as 1.999 s.
"""

COMPUTED_IN = {unit.kind: unit.symbol for unit in UNITS.values() if unit.factor == 1}


def parse_unit(text: str, kinds: tuple[str, ...]) -> Unit:
    """Return the unit a tidy text names; raises NotAQuantity for another kind or none."""
    unit = SPELLINGS.get(text)
    if unit is None or unit.kind not in kinds:
        wanted = ", ".join(u.symbol for u in UNITS.values() if u.kind in kinds)
        raise NotAQuantity(f"{quoted(text)} is not a unit asked for here ({wanted})")
    return unit


def parse_quantity(text: str, quantity: Quantity | str) -> float:
    """Parse a typed quantity, with or without its unit.

    Inputs: the text; the quantity (or its key in the glossary), which gives the
    unit of a bare number and the believable range.
    Result: the value [unit its kind is computed in].
    Raises NotAQuantity naming what is wrong and the range.
    """
    wanted = QUANTITIES[quantity] if isinstance(quantity, str) else quantity
    number, rest = split_number(tidy(text))
    unit = parse_unit(rest, (wanted.kind,)) if rest else UNITS[wanted.unit]
    value = number * unit.factor
    if not wanted.least <= value <= wanted.most:
        raise NotAQuantity(f"{quoted(text.strip())} is outside {wanted.range_text}")
    return float(value)


def format_number(value: float, digits: int = 3) -> str:
    """Return a number with at most so many significant digits, and no exponent."""
    if value == 0:
        return "0"
    rounded = float(f"{value:.{digits}g}")
    return f"{rounded:.10f}".rstrip("0").rstrip(".")


def format_quantity(value: float, unit: str, digits: int = 4) -> str:
    """Return a value with its unit, as it is shown: 300 ms, 10 s, 27 mA, 5 A."""
    larger, start = LARGER.get(unit, (unit, inf))
    if value >= start:
        value, unit = value / 1000, larger
    return f"{format_number(value, digits)} {unit}"
