"""The one place where typed text becomes a number: fields, cells, headings and descriptions.

A mark that stands at a figure (28², 28*) is never taken for a part of it, and a figure with
two points is none: both are refused by name.
"""

from __future__ import annotations

import re
import unicodedata
from decimal import Decimal
from typing import Literal

from checkers.domain.errors import quoted

FIGURE = r"(?:\d+(?:[.,]\d+)?|\.\d+)"
"""A figure inside other text, for patterns; there a comma before it is punctuation."""

NUMBER = re.compile(r"[+-]?(?:[1-9](?: \d{3})+(?!\d)|\d+)?(?:[.,]\d+)?")
THOUSANDS_OR_DECIMALS = re.compile(r"[+-]?[1-9]\d{0,2},\d{3}")
EXPONENT = re.compile(r"e ?[+-]?\d")
LEADING_POINT = re.compile(r"(?:(?<![^\s()\[\]/@:=<>≤≥+-])|(?<=(?<![^\W\d])x))(?=\.\d)")
LEADING_COMMA = re.compile(r"(?:(?<!\S)|(?<=(?<![^\W\d])x))(?=,\d)")
MOST_DIGITS = 40
WHOLE = re.compile(rf"\d{{1,{MOST_DIGITS}}}")
FOOTNOTE_SIGNS = frozenset("*†‡§¶#^")
SAME_DIGITS = ("<wide>", "<font>")  # a digit of another face; every other form is a mark


class NotAQuantity(ValueError):
    """Raised when a text is no number with a unit; its message says what would be right."""


class CouldMeanTwoThings(NotAQuantity):
    """Raised when a text is a number in two ways; its message asks which."""


def tidy(text: str) -> str:
    """Return the text with compatibility characters, odd spaces and case made plain."""
    plain = compatible(text).replace("−", "-").replace("∆", "Δ")
    return " ".join(plain.split()).lower()


def compatible(text: str, form: Literal["NFKC", "NFKD"] = "NFKC") -> str:
    """Return the text in a compatibility form of Unicode, NFKC or NFKD, with marks kept as such.

    A plain normalisation joins them to what they stand at: 28² becomes 282, 1½ becomes 11/2,
    28ᵃ becomes 28a.
    """
    if text.isascii():
        return text
    whole = "".join(one if is_mark(one) else unicodedata.normalize(form, one) for one in text)
    return unicodedata.normalize("NFC" if form == "NFKC" else "NFD", whole)


def is_mark(character: str) -> bool:
    """Tell whether a character would become a digit or a letter of the word before it."""
    tag, _, points = unicodedata.decomposition(character).partition(" ")
    if tag in ("<super>", "<circle>"):
        return True
    digits = (chr(int(point, 16)).isdigit() for point in points.split())
    return tag.startswith("<") and tag not in SAME_DIGITS and any(digits)


def with_leading_nought(text: str) -> str:
    """Return a text in which a figure that begins with its point has a nought before it."""
    return LEADING_COMMA.sub("0", LEADING_POINT.sub("0", text))


def split_number(text: str) -> tuple[Decimal, str]:
    """Split a tidy text into its number and the rest.

    Accepts a decimal comma or point and thousands set apart by spaces. Raises
    NotAQuantity where there is no number, where a mark or a second point stands at it, and
    where a comma could mean thousands as well as decimals.
    """
    match = NUMBER.match(text)
    digits = match.group() if match else ""
    if not any(character.isdigit() for character in digits):
        raise NotAQuantity(f"{quoted(text)} does not begin with a number")
    if len(digits) > MOST_DIGITS:
        raise NotAQuantity(f"{quoted(text)} has more than {MOST_DIGITS} digits")
    if THOUSANDS_OR_DECIMALS.fullmatch(digits):
        plain = digits.replace(",", "")
        raise CouldMeanTwoThings(
            f"{digits!r} could be {plain} or {digits.replace(',', '.')}: write one of these"
        )
    rest = text[len(digits) :].strip()
    _refuse_what_stands_at_it(text, rest)
    return Decimal(digits.replace(" ", "").replace(",", ".")), rest


def _refuse_what_stands_at_it(text: str, rest: str) -> None:
    """Refuse by name a second point, a footnote mark and an exponent."""
    if rest.startswith((".", ",")):
        raise NotAQuantity(f"{quoted(text)} has a point too many: write 28.5, for example")
    mark = next((one for one in rest if _is_footnote(one)), "")
    if mark:
        raise NotAQuantity(f"{quoted(text)} holds the mark {mark!r}: write the figure alone")
    if EXPONENT.match(rest):
        raise NotAQuantity(f"{quoted(text)}: write the number out in full")


def _is_footnote(character: str) -> bool:
    return character in FOOTNOTE_SIGNS or unicodedata.category(character) == "No"


def number_in(text: str) -> float:
    """Return the number that a piece of text is, without a unit; raises NotAQuantity."""
    number, rest = split_number(tidy(text))
    if rest:
        raise NotAQuantity(f"{quoted(text)} is more than a number")
    return float(number)


def is_bare(text: str) -> bool:
    """Tell whether a text is a number with no unit, be it one that could mean two things."""
    try:
        return not split_number(tidy(text))[1]
    except CouldMeanTwoThings:
        return True
    except NotAQuantity:
        return False


def whole_number(text: str) -> int | None:
    """Return a text of digits alone as a number; None for any other, or for too many digits."""
    plain = tidy(text)
    return int(plain) if WHOLE.fullmatch(plain) else None
