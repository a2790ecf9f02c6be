"""Everything judged of the readings of one device: what `readings` answers and `explain` heeds."""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.device.readings import Reading
from checkers.domain.verdicts import Finding
from checkers.judgement.case import Case
from checkers.judgement.dc.fitness import judge_dc_fitness
from checkers.judgement.device.contradictions import contradictions
from checkers.judgement.device.dc_tests import judge_dc_tests
from checkers.judgement.device.fault_time import judge_at_rating, judge_fault_time
from checkers.judgement.device.remarks import with_remarks
from checkers.judgement.device.still_to_test import trip_not_shown
from checkers.judgement.readings.any_reading import judge_reading
from checkers.judgement.readings.verdict import Judged
from checkers.judgement.unknown_edition import code_not_known_then


def judge_each(readings: Sequence[Reading], case: Case) -> list[list[Judged]]:
    """Judge each reading by itself, in their order, with what the others make worth saying."""
    return [
        with_remarks(judge_reading(reading, case), reading, readings, case) for reading in readings
    ]


def judge_whole(
    readings: Sequence[Reading], case: Case, each: Sequence[list[Judged]] | None = None
) -> list[Finding]:
    """Judge every reading of a device, its time for a fault in TT, contradictions, fitness for DC.

    Inputs: the readings; what they are of; each judged by itself, where that was done.
    Result: a finding for each reading and rule.
    """
    apart = judge_each(readings, case) if each is None else each
    judged = [one for found in apart for one in found]
    return [
        *(one.finding for one in judged),
        *trip_not_shown(judged),
        *judge_fault_time(readings, case),
        *judge_at_rating(readings, apart, case),
        *code_not_known_then(case.code, case.day),
        *contradictions(readings, case),
        *judge_dc_fitness(case),
        *judge_dc_tests(readings, apart, case),
    ]
