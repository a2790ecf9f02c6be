"""A finding with what it proves, and the finding that a reading cannot be judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from checkers.domain.device.readings import Reading, Test
from checkers.domain.quantities.measured_value import Said
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.wording.finding import NO_FACTS, finding
from checkers.wording.reading_names import name_of


@dataclass(frozen=True, slots=True)
class Judged:
    """A finding, and whether it shows that the device trips within a limit."""

    finding: Finding
    shows_trip: bool = False


def of_reading(  # the parts that every finding on a reading has
    code: str,
    reading: Reading,
    outcome: Outcome,
    facts: Mapping[str, object] = NO_FACTS,
    judges: Judges = Judges.DEVICE_STANDARD,
    **rest: Any,
) -> Finding:
    """Return the finding of a code on a reading, with further fields of a Finding."""
    shown = str(reading.measured) if reading.measured.said is not Said.UNCLEAR else ""
    told = {"about": name_of(reading), "measured": shown, "measured_as": MeasuredAs.MEASURED}
    known = {"measured": reading.measured, **facts}
    return finding(f"reading.{code}", outcome, judges, known, **(told | rest))


def undecided(
    code: str, reading: Reading, facts: Mapping[str, object] = NO_FACTS, **rest: Any
) -> list[Judged]:
    """Return the finding that a reading cannot be judged, with what to do about it."""
    judges = Judges.FUNCTION if reading.test == Test.BUTTON else Judges.DEVICE_STANDARD
    return [Judged(of_reading(code, reading, Outcome.CANNOT_SAY, facts, judges, **rest))]
