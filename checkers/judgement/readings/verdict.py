"""A finding with what it proves, and the finding that a reading cannot be judged."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.device.readings import Reading, Test
from checkers.domain.quantities.measured_value import Said
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Numbers, Outcome
from checkers.judgement.limits.reading_words import name_of


@dataclass(frozen=True, slots=True)
class Judged:
    """A finding, and whether it shows that the device trips within a limit."""

    finding: Finding
    shows_trip: bool = False


def undecided(
    reading: Reading,
    says: str,
    do_next: str = "",
    limit: str = "",
    numbers: Numbers | None = None,
) -> list[Judged]:
    """Return the finding that a reading cannot be judged, with what to do about it."""
    finding = Finding(
        about=name_of(reading),
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.FUNCTION if reading.test == Test.BUTTON else Judges.DEVICE_STANDARD,
        measured=str(reading.measured) if reading.measured.said is not Said.UNCLEAR else "",
        measured_as=MeasuredAs.MEASURED,
        do_next=do_next,
        limit=limit,
        numbers=numbers,
    )
    return [Judged(finding)]
