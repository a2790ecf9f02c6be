"""A current at which the device must trip: its times by the device standard and the code."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading, Test
from checkers.domain.quantities.measured_value import Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import Demand
from checkers.judgement.limits.reading_words import citations, name_of
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.limits.time_limits import BindingTimes
from checkers.judgement.readings.guards import timer_ran_on, too_quick
from checkers.judgement.readings.installation_tests import installation_limits
from checkers.judgement.readings.time_verdict import (
    AFTER_A_FAILURE,
    changed,
    judge_time,
)
from checkers.judgement.readings.verdict import Judged, undecided


def judge_trip(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    """Judge a reading at a current at which the device must trip."""
    doubted = timer_ran_on(reading, case) or too_quick(reading, case)
    if doubted:
        return doubted
    if reading.measured.said is Said.TRIPPED:
        return undecided(
            reading, "It tripped, but the time is not given.", "Write down the time in ms."
        )
    return [
        _finished(one, case, demand.time)
        for one in (*_by_product(reading, case, demand), *judged_by_code(reading, case))
    ]


def judged_by_code(reading: Reading, case: Case) -> list[Judged]:
    """Judge a time by the code; where its limit depends on a kind not said, all must agree."""
    level = level_of(reading, case)
    timed = dataclasses.replace(reading, test=Test.TRIP_TIME.value)
    times = () if level is None else installation_limits(timed, case, level)
    found = [judge_time(reading, case, one) for one in times]
    if len({one.finding.outcome for one in found}) <= 1:
        return found[:1]
    limits = " or ".join(dict.fromkeys(one.finding.limit for one in found))
    says = f"The limit is {limits}, by a kind of device (such as type I) that is not known."
    left_open = changed(found[0].finding, says, "Read on the device which kind it is.")
    return [Judged(dataclasses.replace(left_open, limit=limits, margin=None, numbers=None))]


def _by_product(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    promised = demand.time.promised
    if promised.at_most is None and _held(reading, case):
        return [Judged(_never_tripped(reading, demand))]
    if not promised.is_set:
        return undecided(
            reading,
            "No time is known for a device of this rating, delay and form at this current.",
            "Read rating and delay on the device again; its maker states its times: compare there.",
        )
    return [judge_time(reading, case, demand.time)]


def _held(reading: Reading, case: Case) -> bool:
    """Tell whether a device held for longer than any may whose greatest time is not known."""
    measured, set_delay = reading.measured, case.device.set_delay or 0.0
    longest = max(JUDGING.counter_full, JUDGING.longest_of_delay * set_delay)
    return measured.said is Said.NO_TRIP or (
        measured.said is Said.MORE_THAN and measured.value >= longest
    )


def _never_tripped(reading: Reading, demand: Demand) -> Finding:
    current = format_quantity(demand.current, "mA")
    return Finding(
        about=name_of(reading),
        outcome=Outcome.FAIL,
        says=f"It held at {current}, where it must trip.",
        judges=Judges.DEVICE_STANDARD,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        limit="it trips",
        do_next=AFTER_A_FAILURE,
        sources=citations(*demand.rows),
    )


def _finished(judged: Judged, case: Case, times: BindingTimes) -> Judged:
    return _not_proven(_doubted(judged, case), case, times)


def _doubted(judged: Judged, case: Case) -> Judged:
    """Turn a pass that standing leakage may have helped into a question."""
    leakage = case.leakage
    finding = judged.finding
    if leakage is None or finding.outcome is not Outcome.PASS:
        return judged
    says = (
        f"{finding.measured} is inside {finding.limit}, but the standing leakage of "
        f"{format_quantity(leakage, 'mA')} may have helped the test current."
    )
    return Judged(
        changed(finding, says, "Take the loads off and repeat; if they were off, say so.")
    )


def _not_proven(judged: Judged, case: Case, times: BindingTimes) -> Judged:
    """Leave open a time over the limit where the maker may prove it at a larger current."""
    finding = judged.finding
    if times.option_at is None or finding.outcome not in (Outcome.FAIL, Outcome.BORDERLINE):
        return judged
    at = format_quantity(times.option_at, "mA")
    if not case.device.quarter_ampere:
        hint = f"{finding.do_next} If its maker declares the 40 ms at {at}, repeat at {at}."
        return Judged(changed(finding, finding.says, hint, finding.outcome))
    if finding.judges is Judges.DEVICE_STANDARD:
        return judged
    says = f"{finding.measured} here proves nothing: this device's 40 ms are declared at {at}."
    return Judged(changed(finding, says, f"Repeat at {at}; the limit at ×1 still binds."))
