"""A reading at one current: judged by what the device must do there, not by the test's name."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading, Test, Waveform
from checkers.domain.quantities.measured_value import Said
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import Demand, Must, demand_at
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.readings.guards import stopped_at
from checkers.judgement.readings.installation_tests import tests_asked_for
from checkers.judgement.readings.may_trip import judge_either, judge_not_known
from checkers.judgement.readings.missing_class import kind_missing
from checkers.judgement.readings.missing_multiple import multiple_missing
from checkers.judgement.readings.no_trip import HALF, judge_hold
from checkers.judgement.readings.trip_time import judge_trip
from checkers.judgement.readings.verdict import Judged

SHOWS_TRIP = frozenset({Said.TRIPPED, Said.FIGURE, Said.LESS_THAN})


def judge_at_current(reading: Reading, case: Case) -> list[Judged]:
    """Judge what a device did at one current; returns a finding for each rule that speaks of it."""
    level = level_of(reading, case)
    if level is None:
        return multiple_missing(reading, case)
    demand = demand_at(case, reading.waveform, level.current)
    unsure = kind_missing(reading, case, demand.time, demand.current)
    return unsure or _judge(reading, case, demand)


def _judge(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    judge = {
        Must.HOLD: judge_hold,
        Must.EITHER: judge_either,
        Must.TRIP: judge_trip,
        Must.NOT_KNOWN: judge_not_known,
    }[demand.must]
    return stopped_at(demand.must, reading, case) or judge(reading, case, demand)


def as_meant(reading: Reading, case: Case) -> Reading:
    """Return a test at half the rating that tripped as one on AC, where only AC can be meant."""
    timed = reading.test in (Test.TRIP_TIME, Test.NO_TRIP)
    tripped = timed and reading.measured.said in SHOWS_TRIP
    not_given = reading.waveform == Waveform.UNKNOWN and reading.multiple == HALF
    if not (tripped and not_given and _only_ac(case)):
        return reading
    return dataclasses.replace(reading, waveform=Waveform.AC.value)


def _only_ac(case: Case) -> bool:
    """Tell whether the type senses nothing but AC, or the code asks for half the rating on AC."""
    asked = (test for test in tests_asked_for(case) if test.test == Test.NO_TRIP)
    return case.device.type == "AC" or any(one.waveform == Waveform.AC for one in asked)
