"""A limit or a range in words: each end with its own unit, or one end with its sign."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity

SIGNS = ("≥", "≤")
IN_SENTENCES = ("at least", "at most")


def between(low: str, high: str, signs: tuple[str, str] = SIGNS) -> str:
    """Return two ends, each in words of its own, as one text: 130 ms to 500 ms, ≤ 300 ms.

    Inputs: the ends, empty where there is none; what stands before an end that is alone.
    Source: [1] NIST Special Publication 811, 7.7 (number from memory): each value with its
    own unit, so that no reader has to guess the first one's.
    """
    if low and high:
        return low if low == high else f"{low} to {high}"
    least, most = signs
    return f"{most} {high}" if high else f"{least} {low}" if low else ""


def range_in_words(low: float | None, high: float | None, unit: str, digits: int = 4) -> str:
    """Return a range of figures: 15 mA to 30 mA, 500 mA to 1 A, ≥ 15 mA, ≤ 300 ms.

    Inputs: the ends [the unit named], None where there is none. Result: empty without an end.
    """
    least, most = ("" if one is None else format_quantity(one, unit, digits) for one in (low, high))
    return between(least, most)
