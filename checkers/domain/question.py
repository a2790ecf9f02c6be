"""What every checker is asked beside its own inputs: under which code, on which day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from checkers.domain.codes.registry import CODES, Code
from checkers.domain.inputs.fields import choice, day

DEFAULT_CODE = "iec"


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """The part of a request that all checkers share."""

    code: str = choice(
        tuple((key, f"{key.upper()}: {code.country}") for key, code in CODES.items()),
        "Local code",
        default=DEFAULT_CODE,
        explain="Whose installation rules apply.",
    )
    on: date | None = day(
        "Day", explain="The day of the reading; today if left out.", left_out="today"
    )

    @property
    def day(self) -> date:
        """The day asked about."""
        return self.on or date.today()  # noqa: DTZ011  # the day where the person stands

    @property
    def local_code(self) -> Code:
        """The installation code asked about."""
        return CODES[self.code]

    @property
    def hazards(self) -> frozenset[str]:
        """What the equipment that is asked about brings with it; nothing where none is named."""
        return frozenset()
