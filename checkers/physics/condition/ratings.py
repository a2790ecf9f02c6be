"""The rated residual currents that a device or an instrument may be found at."""

from __future__ import annotations

RATINGS = (10.0, 30.0, 100.0, 300.0, 500.0, 1000.0)
NEXT_SHARE = 0.75  # of mix-ups are with the very next rating, the rest with the one after


def next_above(rated: float, fraction: float) -> float:
    """Return a higher rating [mA]: mostly the next one, by a fraction from 0 to 1."""
    higher = [one for one in RATINGS if one > rated] or [3.0 * rated]
    return higher[0] if fraction < NEXT_SHARE or len(higher) == 1 else higher[1]


def next_below(rated: float, fraction: float) -> float:
    """Return a lower rating [mA], in the same way."""
    lower = [one for one in reversed(RATINGS) if one < rated] or [rated / 3.0]
    return lower[0] if fraction < NEXT_SHARE or len(lower) == 1 else lower[1]
