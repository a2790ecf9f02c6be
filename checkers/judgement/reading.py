"""Any one reading, handed to the judgement of its kind of test."""

from __future__ import annotations

from dataclasses import replace

from checkers.domain.quantities import format_quantity
from checkers.domain.readings import Reading, Test
from checkers.domain.verdicts import Subject
from checkers.judgement.button import judge_button
from checkers.judgement.case import Case
from checkers.judgement.judged import Judged, undecided
from checkers.judgement.no_trip import judge_no_trip
from checkers.judgement.ramp import judge_ramp
from checkers.judgement.trip_time import judge_trip_time


def judge_reading(reading: Reading, case: Case) -> list[Judged]:
    """Judge one reading of a device; each finding tells which reading it is about."""
    subject = _subject(reading)
    return [
        replace(one, finding=replace(one.finding, subject=subject))
        for one in _judged(reading, case)
    ]


def _subject(reading: Reading) -> Subject:
    return Subject(
        test=reading.test,
        multiple=reading.multiple,
        current=reading.current,
        waveform="" if reading.test == Test.BUTTON else reading.waveform,
        phase=reading.phase,
        showed=reading.measured.said.value,
    )


def _judged(reading: Reading, case: Case) -> list[Judged]:
    if case.only_warns:
        return undecided(
            reading,
            "A monitor warns and does not trip: no trip limit applies, and it does not protect.",
            "Find the device that disconnects, and test that one.",
        )
    if reading.test == Test.TRIP_TIME:
        return judge_trip_time(reading, case)
    if reading.test == Test.NO_TRIP:
        return judge_no_trip(reading, case)
    if reading.test == Test.RAMP:
        return judge_ramp(reading, case)
    if reading.test == Test.BUTTON:
        return judge_button(reading)
    return _test_not_given(reading)


def _test_not_given(reading: Reading) -> list[Judged]:
    measured = reading.measured
    if measured.is_number and measured.bare:
        figure = format_quantity(measured.value, "").strip()
        says = f"{figure} could be ms or mA, and the test is not given."
    else:
        says = "Which test this reading belongs to is not given."
    return undecided(reading, says, "Say which test it was, and write the unit.")
