"""Quantities as people type them, turned into numbers in the unit the code computes in.

The units computed in are ms, mA, ohm, V, Hz, W, degree, percent, µF and mH.
"""

from __future__ import annotations

import re
import unicodedata
from decimal import Decimal
from math import inf

from checkers.domain.glossary import QUANTITIES, SPELLINGS, UNITS, Quantity, Unit

NUMBER = re.compile(
    r"[+-]?(?:[1-9](?: \d{3})+(?!\d)|\d+)?(?:[.,]\d+)?",
)
THOUSANDS_OR_DECIMALS = re.compile(r"[+-]?[1-9]\d{0,2},\d{3}")
LARGER = {"ms": ("s", 2000.0), "mA": ("A", 1000.0)}
"""The unit a thousand times as large, and the value from which it is written everywhere.

Instruments count to 1999 ms, which nobody writes as 1.999 s.
"""

COMPUTED_IN = {unit.kind: unit.symbol for unit in UNITS.values() if unit.factor == 1}


class NotAQuantity(ValueError):
    """Raised when a text is no number with a unit; its message says what would be right."""


class CouldMeanTwoThings(NotAQuantity):
    """Raised when a text is a number in two ways; its message asks which."""


def tidy(text: str) -> str:
    """Return the text with compatibility characters, odd spaces and case made plain."""
    plain = unicodedata.normalize("NFKC", text).replace("−", "-").replace("∆", "Δ")
    return " ".join(plain.split()).lower()


def split_number(text: str) -> tuple[Decimal, str]:
    """Split a tidy text into its number and the rest.

    Accepts a decimal comma or point and thousands set apart by spaces. Raises
    NotAQuantity where there is no number, where it is not finite, and where a
    comma could mean thousands as well as decimals.
    """
    match = NUMBER.match(text)
    digits = match.group() if match else ""
    if not any(character.isdigit() for character in digits):
        raise NotAQuantity(f"{text!r} does not begin with a number")
    if THOUSANDS_OR_DECIMALS.fullmatch(digits):
        plain = digits.replace(",", "")
        raise CouldMeanTwoThings(
            f"{digits!r} could be {plain} or {digits.replace(',', '.')}: write one of these"
        )
    rest = text[len(digits) :].strip()
    if re.match(r"e[+-]?\d", rest):
        raise NotAQuantity(f"{text!r}: write the number out in full")
    return Decimal(digits.replace(" ", "").replace(",", ".")), rest


def parse_unit(text: str, kinds: tuple[str, ...]) -> Unit:
    """Return the unit a tidy text names; raises NotAQuantity for another kind or none."""
    unit = SPELLINGS.get(text)
    if unit is None or unit.kind not in kinds:
        wanted = ", ".join(u.symbol for u in UNITS.values() if u.kind in kinds)
        raise NotAQuantity(f"{text!r} is not a unit asked for here ({wanted})")
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
        raise NotAQuantity(f"{text.strip()!r} is outside {wanted.range_text}")
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
