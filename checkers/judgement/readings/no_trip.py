"""A current at which the device must hold."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading, Test
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import Demand
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.readings.installation_tests import installation_test
from checkers.judgement.readings.verdict import Judged, of_reading, undecided
from checkers.wording.book import part

HALF = 0.5


def judge_hold(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    """Judge a reading at a current at which the device must hold."""
    if held_long_enough(reading.measured, case):
        held = _finding("held", reading, demand, Outcome.PASS)
        return _by_code_too(held, reading, case)
    if reading.measured.said is Said.MORE_THAN:
        lasting = format_quantity(_lasting(case) / 1000, "s")
        return undecided("held-too-briefly", reading, {"lasting": lasting})
    doubted = _helped_by_leakage(reading, case, demand)
    fails = _finding("tripped-where-it-must-hold", reading, demand, Outcome.FAIL)
    return doubted or _by_code_too(fails, reading, case)


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


def _finding(code: str, reading: Reading, demand: Demand, outcome: Outcome) -> Finding:
    """Return what a device did at a current at which it must hold."""
    facts = {"current": format_quantity(demand.current, "mA")}
    sources = () if demand.band is None else demand.band.sources
    limit = part("reading.no-trip")
    return of_reading(code, reading, outcome, facts, limit=limit, sources=sources)


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


def _helped_by_leakage(reading: Reading, case: Case, demand: Demand) -> list[Judged] | None:
    leakage, must_hold = case.leakage, (demand.band.at_least if demand.band else None) or 0.0
    if leakage is not None:
        together = demand.current + leakage
        if together <= must_hold:
            return None
        facts = {
            "together": format_quantity(together, "mA"),
            "least": format_quantity(must_hold, "mA"),
        }
        return undecided("hold-helped-by-leakage", reading, facts)
    if case.circuit.loads == "on":
        return undecided("tripped-with-loads-on", reading)
    return None
