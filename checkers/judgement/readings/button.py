"""The test button: what it proves, and what it does not."""

from __future__ import annotations

from checkers.domain.device.readings import Reading
from checkers.domain.quantities.measured_value import Said
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.readings.verdict import Judged, of_reading, undecided


def judge_button(reading: Reading, case: Case) -> list[Judged]:
    """Judge the functional check; a working button never counts as a timed test."""
    del case
    if reading.measured.said in (Said.OPERATES, Said.TRIPPED):
        return [Judged(_finding("button-works", reading, Outcome.PASS))]
    if reading.measured.said in (Said.DOES_NOT_OPERATE, Said.NO_TRIP):
        return [Judged(_finding("button-dead", reading, Outcome.FAIL))]
    return undecided("button-opening-not-told", reading)


def _finding(code: str, reading: Reading, outcome: Outcome) -> Finding:
    return of_reading(code, reading, outcome, judges=Judges.FUNCTION)
