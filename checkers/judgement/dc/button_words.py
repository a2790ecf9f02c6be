"""What is said of the test button while smooth DC flows through the device."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity
from checkers.physics.core.button_under_bias import ButtonOperates, greatest_button_current
from checkers.wording.book import part

WORDS = {
    ButtonOperates.YES: "dc.button-may-still-open",
    ButtonOperates.NO: "dc.button-would-not-open",
    ButtonOperates.CANNOT_SAY: "dc.button-cannot-be-said",
}


def button_words(operates: ButtonOperates, rated: float) -> str:
    """Return the sentence on the test button, for a rated residual current [mA]."""
    return part(WORDS[operates], most=format_quantity(greatest_button_current(rated), "mA"))
