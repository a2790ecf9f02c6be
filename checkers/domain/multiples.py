"""Multiples of the rated residual current, as people write them."""

from __future__ import annotations

import re
from fractions import Fraction

from checkers.domain.quantities import NotAQuantity, split_number, tidy

GREATEST = 1000.0
LEAST = 0.05
FRACTION = re.compile(r"(\d+) ?[/⁄] ?(\d+)")
HALVES = {"half": 0.5}


def parse_multiple(text: str) -> float:
    """Parse a multiple such as ½, 0.5, 1/2, x1, 1x, 5 x or ×5.

    Result: the multiple of the rated residual current [no unit].
    Raises NotAQuantity when the text is no multiple or beyond belief.
    """
    plain = tidy(text).replace("×", "x").removesuffix("iδn").strip()
    plain = plain.removeprefix("x").removesuffix("x").strip()
    value = HALVES.get(plain) or _number(plain, text)
    if not LEAST <= value <= GREATEST:
        raise NotAQuantity(f"{text.strip()!r} is outside {LEAST:g} to {GREATEST:g} times")
    return value


def _number(plain: str, text: str) -> float:
    fraction = FRACTION.fullmatch(plain)
    if fraction and int(fraction[2]):
        return float(Fraction(int(fraction[1]), int(fraction[2])))
    number, rest = split_number(plain)
    if rest:
        raise NotAQuantity(f"{text.strip()!r} is not a multiple: write 1/2, 1 or 5, for example")
    return float(number)
