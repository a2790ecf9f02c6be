"""What is said of the test button while smooth DC flows through the device."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity
from checkers.physics.core.button_under_bias import ButtonOperates, greatest_button_current


def button_words(operates: ButtonOperates, rated: float) -> str:
    """Return the sentence on the test button, for a rated residual current [mA]."""
    most = format_quantity(greatest_button_current(rated), "mA")
    return {
        ButtonOperates.YES: f"The test button, which may drive up to {most}, may well still "
        "open it: a button that works proves nothing here.",
        ButtonOperates.NO: f"Not even the test button, which drives {most} at most, would open it.",
        ButtonOperates.CANNOT_SAY: f"Whether the test button, which drives {most} at most, "
        "opens it cannot be said.",
    }[operates]
