"""Any one reading, handed to the judgement of its kind of test."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from checkers.domain.device.readings import Reading, Test
from checkers.domain.verdicts import Subject
from checkers.judgement.case import Case
from checkers.judgement.readings.at_current import as_meant, judge_at_current
from checkers.judgement.readings.button import judge_button
from checkers.judgement.readings.guards import stopped
from checkers.judgement.readings.ramp import judge_ramp
from checkers.judgement.readings.verdict import Judged

JUDGES: Mapping[str, Callable[[Reading, Case], list[Judged]]] = {
    Test.TRIP_TIME: judge_at_current,
    Test.NO_TRIP: judge_at_current,
    Test.RAMP: judge_ramp,
    Test.BUTTON: judge_button,
}


def judge_reading(reading: Reading, case: Case) -> list[Judged]:
    """Judge one reading that no guard of its test stops; each finding tells which it is about.

    A test that is not known is always stopped, so there is no judgement of it.
    """
    reading = as_meant(reading, case)
    subject = _subject(reading)
    found = stopped(reading, case) or JUDGES[reading.test](reading, case)
    return [replace(one, finding=replace(one.finding, subject=subject)) for one in found]


def _subject(reading: Reading) -> Subject:
    return Subject(
        test=reading.test,
        multiple=reading.multiple,
        current=reading.current,
        waveform="" if reading.test == Test.BUTTON else reading.waveform,
        phase=reading.phase,
        showed=reading.measured.said.value,
    )
