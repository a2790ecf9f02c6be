"""Rounding that never flatters: a limit is rounded down, a burden is rounded up."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

NOISE = 9  # decimal places that hold every figure typed, and none of the binary remainder


def rounded_up(value: float, digits: int = 4) -> float:
    """Return a value that is not to look smaller, to so many significant digits."""
    return _rounded(value, digits, ROUND_CEILING)


def rounded_down(value: float, digits: int = 2) -> float:
    """Return a value that is not to look larger, to so many significant digits or whole ones."""
    return _rounded(value, digits, ROUND_FLOOR)


def rounded(value: float, digits: int = 4) -> float:
    """Return a value to so many significant digits, where neither side is the safe one."""
    return float(f"{value:.{digits}g}")


def _rounded(value: float, digits: int, towards: str) -> float:
    exact = Decimal(repr(round(value, NOISE)))
    if not exact:
        return 0.0
    last = min(exact.adjusted() - digits + 1, 0)
    return float(exact.quantize(Decimal(1).scaleb(last), rounding=towards))
