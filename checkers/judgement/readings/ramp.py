"""Trip currents from a rising (ramp) test."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.against_limits import Rule, compare_with, finding_for
from checkers.judgement.limits.comparison import Comparison, Limits
from checkers.judgement.limits.current_bands import Band, operating_band
from checkers.judgement.limits.numbers import reading_numbers
from checkers.judgement.limits.reading_words import citations, limit_words, name_of
from checkers.judgement.readings.installation_tests import installation_band
from checkers.judgement.readings.missing_class import kind_missing
from checkers.judgement.readings.verdict import Judged, undecided

TOO_HIGH = (
    "Check that the waveform set was the right one, take the loads off and repeat; "
    "if it still fails, do not leave the device in service."
)
TOO_LOW = "Take the loads off and repeat: standing leakage makes a device seem too sensitive."


def judge_ramp(reading: Reading, case: Case) -> list[Judged]:
    """Judge one trip current; returns a finding for each rule that speaks of it."""
    band = operating_band(case, reading.waveform)
    if band is None or band.at_most is None:
        return undecided(
            reading,
            f"Type {case.device.type} in this form has no operating current on this waveform.",
            "Test with a waveform that the type must respond to.",
        )
    return kind_missing(reading, case) or _judge_band(reading, case, band)


def _judge_band(reading: Reading, case: Case, band: Band) -> list[Judged]:
    if reading.measured.said is Said.TRIPPED:
        return undecided(reading, "It tripped, but the current is not given.", "Note it in mA.")
    if reading.measured.said is Said.NO_TRIP:
        return [Judged(_never_tripped(reading, band))]
    rules = [_rule(case, band), installation_band(reading, case)]
    return [_judged(reading, case, rule) for rule in rules if rule is not None]


def _rule(case: Case, band: Band) -> Rule:
    near = case.current_uncertainty(case.device.rated_residual_current or band.at_most or 0.0)
    return Rule(
        limits=Limits(band.at_least, band.at_most),
        judges=Judges.DEVICE_STANDARD,
        sources=citations(band.row),
        unit="mA",
        uncertainty_at_most=near,
        uncertainty_at_least=near,
    )


def _never_tripped(reading: Reading, band: Band) -> Finding:
    limits = Limits(band.at_least, band.at_most)
    return Finding(
        about=name_of(reading),
        outcome=Outcome.FAIL,
        says="The current rose and the device did not trip.",
        judges=Judges.DEVICE_STANDARD,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        limit=limit_words(limits, "mA"),
        do_next=TOO_HIGH,
        sources=citations(band.row),
        numbers=reading_numbers(reading.measured, limits, "mA", 0.0),
    )


def _judged(reading: Reading, case: Case, rule: Rule) -> Judged:
    measured = reading.measured
    compared = compare_with(rule, measured, JUDGING.confidence)
    leakage = case.leakage
    if leakage is not None:
        outcomes = _with_leakage(measured, leakage, rule) | {compared.outcome}
        if len(outcomes) > 1:
            return _left_open(reading, leakage, rule, outcomes)
    finding = finding_for(reading, rule, compared, do_next=_next_step(measured, rule, compared))
    return Judged(finding, compared.outcome is Outcome.PASS)


def _with_leakage(measured: Measured, leakage: float, rule: Rule) -> set[Outcome]:
    """Return the outcomes with the leakage added and with it taken off."""
    shifted = (
        dataclasses.replace(measured, value=measured.value + step) for step in (-leakage, leakage)
    )
    return {compare_with(rule, one, JUDGING.confidence).outcome for one in shifted}


def _left_open(reading: Reading, leakage: float, rule: Rule, outcomes: set[Outcome]) -> Judged:
    """Return the finding that the leakage decides; it is borderline where none of them passes."""
    within = format_quantity(leakage, "mA")
    finding = undecided(
        reading,
        f"With a standing leakage of {within} the true trip current lies anywhere within "
        f"{within} of {reading.measured}.",
        "Take the loads off and repeat.",
        limit=limit_words(rule.limits, "mA"),
        numbers=reading_numbers(reading.measured, rule.limits, "mA", leakage),
    )[0].finding
    passes = outcomes & {Outcome.PASS, Outcome.CANNOT_SAY}
    outcome = Outcome.CANNOT_SAY if passes else Outcome.BORDERLINE
    return Judged(dataclasses.replace(finding, outcome=outcome, judges=rule.judges))


def _next_step(measured: Measured, rule: Rule, compared: Comparison) -> str:
    if compared.outcome is Outcome.PASS:
        return ""
    high = rule.limits.at_most is not None and measured.value > rule.limits.at_most * 0.75
    return TOO_HIGH if high else TOO_LOW
