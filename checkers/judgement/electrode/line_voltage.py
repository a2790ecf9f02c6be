"""The line voltage to earth that is taken where none is given."""

from __future__ import annotations

from checkers.domain.sources.constants import CONSTANTS


def usual_line_voltage(code: str) -> float:
    """Return the usual line voltage to earth [V] where a code applies."""
    usual = CONSTANTS.get(f"usual_line_voltage_{code}", CONSTANTS["usual_line_voltage"])
    return usual.value
