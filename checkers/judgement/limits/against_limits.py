"""A measured figure against the limits of one rule, as one finding."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.device.readings import Reading
from checkers.domain.quantities.measured_value import Measured
from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome, worst
from checkers.judgement.limits.comparison import Comparison, Limits, compare
from checkers.judgement.limits.numbers import reading_numbers
from checkers.judgement.limits.reading_words import limit_words, name_of


@dataclass(frozen=True, slots=True)
class Rule:
    """Limits [ms or mA], the uncertainty near each of them, and where they stand."""

    limits: Limits
    judges: Judges
    sources: tuple[Citation, ...]
    unit: str
    uncertainty_at_most: float = 0.0
    uncertainty_at_least: float = 0.0


def compare_with(rule: Rule, measured: Measured, confidence: float) -> Comparison:
    """Compare a reading with each end of a rule's limits, with the uncertainty near that end."""
    ends = [
        compare(measured, Limits(at_most=rule.limits.at_most), rule.uncertainty_at_most, confidence)
        if rule.limits.at_most is not None
        else None,
        compare(
            measured, Limits(at_least=rule.limits.at_least), rule.uncertainty_at_least, confidence
        )
        if rule.limits.at_least is not None
        else None,
    ]
    found = [one for one in ends if one is not None]
    return Comparison(
        worst(one.outcome for one in found),
        min((one.margin for one in found if one.margin is not None), default=None),
        min((one.conformance for one in found if one.conformance is not None), default=None),
    )


def finding_for(
    reading: Reading, rule: Rule, compared: Comparison, do_next: str = "", note: str = ""
) -> Finding:
    """Return the finding for a reading compared with a rule, in one sentence."""
    says = SENTENCES[compared.outcome](reading.measured, rule, compared)
    return Finding(
        about=name_of(reading),
        outcome=compared.outcome,
        says=f"{says} {note}".strip(),
        judges=rule.judges,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        limit=limit_words(rule.limits, rule.unit),
        margin=compared.margin,
        do_next=do_next,
        sources=rule.sources,
        numbers=reading_numbers(
            reading.measured, rule.limits, rule.unit, _uncertainty(reading.measured, rule)
        ),
    )


def _uncertainty(measured: Measured, rule: Rule) -> float:
    """Return the uncertainty near the end of the limits that the reading is nearer to."""
    low, high = rule.limits.at_least, rule.limits.at_most
    nearer_low = low is not None and (high is None or 2 * measured.value < low + high)
    return rule.uncertainty_at_least if nearer_low else rule.uncertainty_at_most


def _whose(rule: Rule) -> str:
    return "installation rule" if rule.judges is Judges.INSTALLATION_CODE else "device standard"


def _pass(measured: Measured, rule: Rule, compared: Comparison) -> str:
    del compared
    return f"{measured} meets the {_whose(rule)}: {limit_words(rule.limits, rule.unit)}."


def _fail(measured: Measured, rule: Rule, compared: Comparison) -> str:
    limit = limit_words(rule.limits, rule.unit)
    text = f"{measured} does not meet the {_whose(rule)}: {limit}."
    if compared.margin is None or not _is_slight(measured, rule, compared.margin):
        return text
    out = format_quantity(abs(compared.margin), rule.unit)
    return text.removesuffix(".") + f"; it is slightly outside, by {out}."


def _is_slight(measured: Measured, rule: Rule, margin: float) -> bool:
    low = rule.limits.at_least is not None and measured.value < rule.limits.at_least
    near = rule.uncertainty_at_least if low else rule.uncertainty_at_most
    return 0 > margin >= -2 * near


def _borderline(measured: Measured, rule: Rule, compared: Comparison) -> str:
    assert compared.margin is not None  # noqa: S101  # only a figure can be borderline
    side = "inside" if compared.margin >= 0 else "outside"
    distance = format_quantity(abs(compared.margin), rule.unit)
    percent = format_number(100 * (compared.conformance or 0.0), 2)
    limit = limit_words(rule.limits, rule.unit)
    return (
        f"{measured} is {distance} {side} the {_whose(rule)} ({limit}), "
        f"within the instrument's uncertainty; it is {percent} % sure to meet it."
    )


def _cannot_say(measured: Measured, rule: Rule, compared: Comparison) -> str:
    del compared
    return (
        f"{measured} stops short of the limit ({limit_words(rule.limits, rule.unit)}), "
        "so it does not tell on which side the device is."
    )


SENTENCES = {
    Outcome.PASS: _pass,
    Outcome.FAIL: _fail,
    Outcome.BORDERLINE: _borderline,
    Outcome.CANNOT_SAY: _cannot_say,
}
