"""Multiples of the rated residual current, as people write them."""

from __future__ import annotations

import re
import unicodedata

from checkers.domain.errors import quoted
from checkers.domain.quantities.typed_numbers import NotAQuantity, split_number, tidy

GREATEST = 1000.0
LEAST = 0.05
FRACTION = re.compile(r"(\d{1,4}) ?[/⁄] ?(\d{1,4})")
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
        raise NotAQuantity(f"{quoted(text.strip())} is outside {LEAST:g} to {GREATEST:g} times")
    return value


def _number(plain: str, text: str) -> float:
    fraction = FRACTION.fullmatch(_spelt_out(plain))
    if fraction:
        above, below = (split_number(part)[0] for part in fraction.groups())
        return float(above / below) if below else 0.0
    number, rest = split_number(plain)
    if rest:
        raise NotAQuantity(
            f"{quoted(text.strip())} is not a multiple: write 1/2, 1 or 5, for example"
        )
    return float(number)


def _spelt_out(plain: str) -> str:
    """Return a fraction of one character, ½ say, with its stroke; 1½ stays as it is."""
    is_fraction = len(plain) == 1 and unicodedata.decomposition(plain).startswith("<fraction>")
    return unicodedata.normalize("NFKC", plain) if is_fraction else plain
