"""Trip currents from a rising (ramp) test."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading
from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.against_limits import compare_with, finding_for
from checkers.judgement.limits.comparison import Comparison
from checkers.judgement.limits.current_bands import operating_band
from checkers.judgement.limits.numbers import reading_numbers
from checkers.judgement.readings.installation_tests import installation_band
from checkers.judgement.readings.missing_class import kind_missing
from checkers.judgement.readings.verdict import Judged, of_reading, undecided
from checkers.wording.book import part


def judge_ramp(reading: Reading, case: Case) -> list[Judged]:
    """Judge one trip current; returns a finding for each rule that speaks of it."""
    band = operating_band(case, reading.waveform)
    if band is None or band.at_most is None:
        return undecided("no-operating-current", reading, {"type": case.device.type})
    return kind_missing(reading, case) or _judge_band(reading, case, band)


def _judge_band(reading: Reading, case: Case, band: Limit) -> list[Judged]:
    if reading.measured.said is Said.TRIPPED:
        return undecided("current-not-given", reading)
    if reading.measured.said is Said.NO_TRIP:
        return [Judged(_never_tripped(reading, band))]
    limits = [band, installation_band(reading, case)]
    return [_judged(reading, case, limit) for limit in limits if limit is not None]


def _never_tripped(reading: Reading, band: Limit) -> Finding:
    return of_reading(
        "never-tripped",
        reading,
        Outcome.FAIL,
        limit=str(band),
        sources=band.sources,
        numbers=reading_numbers(reading.measured, band, 0.0),
    )


def _judged(reading: Reading, case: Case, limit: Limit) -> Judged:
    measured = reading.measured
    compared = compare_with(limit, measured, case)
    leakage = case.leakage
    if leakage is not None:
        outcomes = _with_leakage(measured, leakage, limit, case) | {compared.outcome}
        if len(outcomes) > 1:
            return _left_open(reading, leakage, limit, outcomes)
    do_next = _next_step(measured, limit, compared)
    finding = finding_for(reading, limit, case, compared, do_next=do_next)
    return Judged(finding, compared.outcome is Outcome.PASS)


def _with_leakage(measured: Measured, leakage: float, limit: Limit, case: Case) -> set[Outcome]:
    """Return the outcomes with the leakage added and with it taken off."""
    shifted = (
        dataclasses.replace(measured, value=measured.value + step) for step in (-leakage, leakage)
    )
    return {compare_with(limit, one, case).outcome for one in shifted}


def _left_open(reading: Reading, leakage: float, limit: Limit, outcomes: set[Outcome]) -> Judged:
    """Return the finding that the leakage decides; it is borderline where none of them passes."""
    passes = outcomes & {Outcome.PASS, Outcome.CANNOT_SAY}
    finding = of_reading(
        "current-with-leakage",
        reading,
        Outcome.CANNOT_SAY if passes else Outcome.BORDERLINE,
        {"leakage": format_quantity(leakage, "mA")},
        limit.judges,
        limit=str(limit),
        numbers=reading_numbers(reading.measured, limit, leakage),
    )
    return Judged(finding)


def _next_step(measured: Measured, limit: Limit, compared: Comparison) -> str:
    if compared.outcome is Outcome.PASS:
        return ""
    high = limit.at_most is not None and measured.value > limit.at_most * JUDGING.slow_from
    return part("reading.too-high" if high else "reading.too-low")
