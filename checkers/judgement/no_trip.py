"""The no-trip test: a current at which the device must hold."""

from __future__ import annotations

import dataclasses

from checkers.domain.judging import JUDGING
from checkers.domain.measured import Measured, Said
from checkers.domain.quantities import format_quantity
from checkers.domain.readings import Reading, Test
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.current_bands import Band, operating_band
from checkers.judgement.installation_tests import installation_test
from checkers.judgement.judged import Judged, undecided
from checkers.judgement.multiple_missing import multiple_missing
from checkers.judgement.reading_words import citations, name_of
from checkers.judgement.test_level import Level, level_of

WITHOUT_LOADS = "Take the loads off and repeat; find the leakage before blaming the device."


def judge_no_trip(reading: Reading, case: Case) -> list[Judged]:
    """Judge one no-trip test; a device that holds through it passes on any waveform."""
    if _held_long_enough(reading.measured, case):
        return _by_code_too(_held(reading, case), reading, case)
    if _held_too_shortly(reading.measured):
        return undecided(
            reading,
            f"It held, but {reading.measured} is shorter than the no-trip test.",
            f"Hold the current for {format_quantity(_lasting(case) / 1000, 's')}.",
        )
    return _tripped(reading, case)


def _lasting(case: Case) -> float:
    lasting = [
        test.lasting
        for test in case.code.tests_on(case.day)
        if test.test == Test.NO_TRIP and test.lasting is not None
    ]
    return max(lasting, default=JUDGING.no_trip_lasts)


def _held_long_enough(measured: Measured, case: Case) -> bool:
    if measured.said is Said.NO_TRIP:
        return True
    shown = min(_lasting(case), JUDGING.counter_full)
    return measured.said is Said.MORE_THAN and measured.value >= shown


def _held_too_shortly(measured: Measured) -> bool:
    return measured.said is Said.MORE_THAN


def _held(reading: Reading, case: Case) -> Finding:
    band = operating_band(case, reading.waveform)
    return Finding(
        about=name_of(reading),
        outcome=Outcome.PASS,
        says="It held through the no-trip test; a device that never trips would do so too.",
        judges=Judges.DEVICE_STANDARD,
        measured=str(reading.measured),
        limit="no trip",
        sources=citations(band.row) if band else (),
    )


def _tripped(reading: Reading, case: Case) -> list[Judged]:
    level = level_of(reading, case)
    if level is None:
        return multiple_missing(reading, case)
    band = operating_band(case, reading.waveform)
    if band is None or band.at_least is None:
        return undecided(reading, "No non-operating current is known for this waveform.")
    if level.current > band.at_least:
        return _above_the_band(reading, level, band)
    failed = _fails(reading, level, band)
    return _helped_by_leakage(reading, case, level, band) or _by_code_too(failed, reading, case)


def _by_code_too(finding: Finding, reading: Reading, case: Case) -> list[Judged]:
    """Return the finding of the device standard, and the code's where it judges that test."""
    test = installation_test(reading, case, level_of(reading, case))
    if test is None:
        return [Judged(finding)]
    by_code = dataclasses.replace(
        finding, judges=Judges.INSTALLATION_CODE, sources=(test.citation,)
    )
    return [Judged(finding), Judged(by_code)]


def _above_the_band(reading: Reading, level: Level, band: Band) -> list[Judged]:
    must_hold = format_quantity(band.at_least or 0.0, "mA")
    return undecided(
        reading,
        f"{format_quantity(level.current, 'mA')} is more than the device must hold on this "
        f"waveform ({must_hold}), so tripping is allowed.",
        "Repeat at that current or below.",
    )


def _helped_by_leakage(
    reading: Reading, case: Case, level: Level, band: Band
) -> list[Judged] | None:
    leakage = case.circuit.standing_leakage
    if leakage and case.circuit.loads != "off":
        total = format_quantity(level.current + leakage, "mA")
        must_hold = format_quantity(band.at_least or 0.0, "mA")
        says = (
            f"The test current and the standing leakage make up to {total} together, above "
            f"{must_hold}: the device is not shown to be at fault."
        )
        return undecided(reading, says, WITHOUT_LOADS)
    if case.circuit.loads == "on":
        says = "It tripped with the loads connected: their leakage may have added to the test."
        return undecided(reading, says, WITHOUT_LOADS)
    return None


def _fails(reading: Reading, level: Level, band: Band) -> Finding:
    return Finding(
        about=name_of(reading),
        outcome=Outcome.FAIL,
        says=f"It tripped at {format_quantity(level.current, 'mA')}, where it must hold.",
        judges=Judges.DEVICE_STANDARD,
        measured=str(reading.measured),
        limit="no trip",
        do_next=WITHOUT_LOADS,
        sources=citations(band.row),
    )
