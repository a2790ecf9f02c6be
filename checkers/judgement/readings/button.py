"""The test button: what it proves, and what it does not."""

from __future__ import annotations

from checkers.domain.device.readings import Reading
from checkers.domain.quantities.measured_value import Said
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.reading_words import name_of
from checkers.judgement.readings.verdict import Judged, undecided

WORKS = (
    "The button opens the device: its mechanism moves. It drives more than the rating, "
    "so it does not show that the device trips at its rating."
)
DEAD = "The button does not open the device."
REMEDY = (
    "Check that the supply was on; if it was, take the device out of service. "
    "Smooth DC through the device can also silence its button."
)


def judge_button(reading: Reading, case: Case) -> list[Judged]:
    """Judge the functional check; a working button never counts as a timed test."""
    del case
    if reading.measured.said in (Said.OPERATES, Said.TRIPPED):
        return [Judged(_finding(reading, Outcome.PASS, WORKS))]
    if reading.measured.said in (Said.DOES_NOT_OPERATE, Said.NO_TRIP):
        return [Judged(_finding(reading, Outcome.FAIL, DEAD, REMEDY))]
    return undecided(reading, "Write whether the button opened the device or not.")


def _finding(reading: Reading, outcome: Outcome, says: str, do_next: str = "") -> Finding:
    return Finding(
        about=name_of(reading),
        outcome=outcome,
        says=says,
        judges=Judges.FUNCTION,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        do_next=do_next,
    )
