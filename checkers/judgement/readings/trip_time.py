"""A current at which the device must trip: its times by the device standard and the code."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping

from checkers.domain.device.readings import Reading, Test
from checkers.domain.limits.rows import citations
from checkers.domain.quantities.measured_value import Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import Demand
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.limits.time_limits import BindingTimes
from checkers.judgement.readings.installation_tests import installation_limits
from checkers.judgement.readings.time_verdict import judge_time
from checkers.judgement.readings.verdict import Judged, of_reading, undecided
from checkers.wording.book import part
from checkers.wording.finding import reworded


def judge_trip(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    """Judge a reading at a current at which the device must trip."""
    if reading.measured.said is Said.TRIPPED:
        return undecided("time-not-given", reading)
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
    limits = part("reading.or").join(dict.fromkeys(one.finding.limit for one in found))
    left_open = reworded(
        found[0].finding,
        "reading.limit-by-kind",
        {"limits": limits},
        outcome=Outcome.CANNOT_SAY,
        limit=limits,
        margin=None,
        numbers=None,
    )
    return [Judged(left_open)]


def _by_product(reading: Reading, case: Case, demand: Demand) -> list[Judged]:
    promised = demand.time.promised
    if promised.at_most is None and _held(reading, case):
        return [Judged(_never_tripped(reading, demand))]
    if not promised.is_set:
        return undecided("no-time-known", reading)
    return [judge_time(reading, case, demand.time)]


def _held(reading: Reading, case: Case) -> bool:
    """Tell whether a device held for longer than any may whose greatest time is not known."""
    measured, set_delay = reading.measured, case.device.set_delay or 0.0
    longest = max(JUDGING.counter_full, JUDGING.longest_of_delay * set_delay)
    return measured.said is Said.NO_TRIP or (
        measured.said is Said.MORE_THAN and measured.value >= longest
    )


def _never_tripped(reading: Reading, demand: Demand) -> Finding:
    return of_reading(
        "held-where-it-must-trip",
        reading,
        Outcome.FAIL,
        {"current": format_quantity(demand.current, "mA")},
        limit=part("reading.it-trips"),
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
    facts = _shown(finding) | {"leakage": format_quantity(leakage, "mA")}
    return _left_open("time-helped-by-leakage", finding, facts)


def _not_proven(judged: Judged, case: Case, times: BindingTimes) -> Judged:
    """Leave open a time over the limit where the maker may prove it at a larger current."""
    finding = judged.finding
    if times.option_at is None or finding.outcome not in (Outcome.FAIL, Outcome.BORDERLINE):
        return judged
    at = format_quantity(times.option_at, "mA")
    if not case.device.quarter_ampere:
        hint = f"{finding.do_next} {part('reading.option-declared', at=at)}"
        return Judged(dataclasses.replace(finding, do_next=hint))
    if finding.judges is Judges.DEVICE_STANDARD:
        return judged
    return _left_open("proves-nothing-here", finding, _shown(finding) | {"at": at})


def _shown(finding: Finding) -> dict[str, object]:
    return {"measured": finding.measured, "limit": finding.limit}


def _left_open(code: str, finding: Finding, facts: Mapping[str, object]) -> Judged:
    return Judged(reworded(finding, f"reading.{code}", facts, outcome=Outcome.CANNOT_SAY))
