"""What was looked at beside the readings: marking, settings, path to earth, bond."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.inputs.fields import choice

NOT_LOOKED = ("unknown", "not looked at")
# What was looked at, and the answer that is out of the ordinary.
STRANGE = {"marking": "another", "settings": "other", "path": "found", "bond": "missing"}


@dataclass(frozen=True, slots=True)
class Looked:
    """What was found by looking and measuring, each left out where nobody did."""

    marking: str = choice(
        (("as-noted", "the device noted"), ("another", "another device"), NOT_LOOKED),
        "Marking on the device",
        default="unknown",
        explain="Rating, type and delay, as printed on it.",
    )
    settings: str = choice(
        (("as-noted", "as noted"), ("other", "others"), NOT_LOOKED),
        "Settings of the instrument",
        default="unknown",
    )
    path: str = choice(
        (("none", "none"), ("found", "found"), NOT_LOOKED),
        "Path from neutral to earth below the device",
        default="unknown",
        explain="Insulation measured with the circuit isolated and its neutral disconnected.",
    )
    bond: str = choice(
        (("there", "there"), ("missing", "missing"), NOT_LOOKED),
        "Bond from neutral to earth at the source",
        default="unknown",
    )

    @property
    def found(self) -> tuple[tuple[str, bool], ...]:
        """What was looked at, and whether it is out of the ordinary."""
        answers = ((what, getattr(self, what)) for what in STRANGE)
        return tuple(
            (what, answer == STRANGE[what]) for what, answer in answers if answer != "unknown"
        )
