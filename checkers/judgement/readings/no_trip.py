"""A current at which the device must hold."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading, Test
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.documents import Citation
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import Demand
from checkers.judgement.limits.reading_words import name_of
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.readings.installation_tests import installation_test
from checkers.judgement.readings.verdict import Judged, undecided

HALF = 0.5
WITHOUT_LOADS = "Take the loads off and repeat; find the leakage before blaming the device."


def judge_hold(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    """Judge a reading at a current at which the device must hold."""
    if held_long_enough(reading.measured, case):
        return _by_code_too(_held(reading, demand), reading, case)
    if reading.measured.said is Said.MORE_THAN:
        return undecided(
            reading,
            f"It held, but {reading.measured} is shorter than the no-trip test.",
            f"Hold the current for {format_quantity(_lasting(case) / 1000, 's')}.",
        )
    doubted = _helped_by_leakage(reading, case, demand)
    return doubted or _by_code_too(_fails(reading, demand), reading, case)


def _lasting(case: Case) -> float:
    lasting = [
        test.lasting
        for test in case.code.tests_on(case.day)
        if test.test == Test.NO_TRIP and test.lasting is not None
    ]
    return max(lasting, default=JUDGING.no_trip_lasts)


def held_long_enough(measured: Measured, case: Case) -> bool:
    """Tell whether a device held for as long as a no-trip test lasts."""
    if measured.said is Said.NO_TRIP:
        return True
    shown = min(_lasting(case), JUDGING.counter_full)
    return measured.said is Said.MORE_THAN and measured.value >= shown


def _held(reading: Reading, demand: Demand) -> Finding:
    return Finding(
        about=name_of(reading),
        outcome=Outcome.PASS,
        says=f"It held at {_current(demand)}; a device that never trips would do so too.",
        judges=Judges.DEVICE_STANDARD,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        limit="no trip",
        sources=_sources(demand),
    )


def _by_code_too(finding: Finding, reading: Reading, case: Case) -> list[Judged]:
    """Return the finding of the device standard, and the code's where it judges that test."""
    as_no_trip = dataclasses.replace(reading, test=Test.NO_TRIP.value)
    test = installation_test(as_no_trip, case, level_of(reading, case))
    if test is None:
        return [Judged(finding)]
    by_code = dataclasses.replace(
        finding, judges=Judges.INSTALLATION_CODE, sources=(test.citation,)
    )
    return [Judged(finding), Judged(by_code)]


def _current(demand: Demand) -> str:
    return format_quantity(demand.current, "mA")


def _sources(demand: Demand) -> tuple[Citation, ...]:
    return () if demand.band is None else demand.band.sources


def _helped_by_leakage(reading: Reading, case: Case, demand: Demand) -> list[Judged] | None:
    leakage, must_hold = case.leakage, (demand.band.at_least if demand.band else None) or 0.0
    if leakage is not None:
        together = demand.current + leakage
        if together <= must_hold:
            return None
        says = (
            f"The test current and the standing leakage make up to "
            f"{format_quantity(together, 'mA')} together, above "
            f"{format_quantity(must_hold, 'mA')}: the device is not shown to be at fault."
        )
        return undecided(reading, says, WITHOUT_LOADS)
    if case.circuit.loads == "on":
        says = "It tripped with the loads connected: their leakage may have added to the test."
        return undecided(reading, says, WITHOUT_LOADS)
    return None


def _fails(reading: Reading, demand: Demand) -> Finding:
    return Finding(
        about=name_of(reading),
        outcome=Outcome.FAIL,
        says=f"It tripped at {_current(demand)}, where it must hold.",
        judges=Judges.DEVICE_STANDARD,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        limit="no trip",
        do_next=WITHOUT_LOADS,
        sources=_sources(demand),
    )
