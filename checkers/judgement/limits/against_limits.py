"""A measured figure against one limit, as one finding."""

from __future__ import annotations

import dataclasses

from checkers.domain.device.readings import Reading
from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import Measured
from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome, worst
from checkers.judgement.case import Case
from checkers.judgement.limits.comparison import Comparison, compare
from checkers.judgement.limits.numbers import reading_numbers
from checkers.judgement.limits.reading_words import name_of


def compare_with(limit: Limit, measured: Measured, case: Case) -> Comparison:
    """Compare a reading with each end of a limit, with the uncertainty near that end."""
    near_least, near_most = case.uncertainty_near(limit)
    ends = [
        (dataclasses.replace(limit, at_least=None), limit.at_most, near_most),
        (dataclasses.replace(limit, at_most=None), limit.at_least, near_least),
    ]
    found = [
        compare(measured, one, near, JUDGING.confidence)
        for one, end, near in ends
        if end is not None
    ]
    return Comparison(
        worst(one.outcome for one in found),
        min((one.margin for one in found if one.margin is not None), default=None),
        min((one.conformance for one in found if one.conformance is not None), default=None),
    )


def finding_for(
    reading: Reading, limit: Limit, case: Case, compared: Comparison, do_next: str = ""
) -> Finding:
    """Return the finding for a reading compared with a limit, in one sentence."""
    near = _uncertainty(reading.measured, limit, case)
    return Finding(
        about=name_of(reading),
        outcome=compared.outcome,
        says=SENTENCES[compared.outcome](reading.measured, limit, compared, near),
        judges=limit.judges,
        measured=str(reading.measured),
        measured_as=MeasuredAs.MEASURED,
        limit=str(limit),
        margin=compared.margin,
        do_next=do_next,
        sources=limit.sources,
        numbers=reading_numbers(reading.measured, limit, near),
    )


def _uncertainty(measured: Measured, limit: Limit, case: Case) -> float:
    """Return the uncertainty near the end of a limit that the reading is nearer to."""
    near_least, near_most = case.uncertainty_near(limit)
    low, high = limit.at_least, limit.at_most
    nearer_low = low is not None and (high is None or 2 * measured.value < low + high)
    return near_least if nearer_low else near_most


def _whose(limit: Limit) -> str:
    return "installation rule" if limit.judges is Judges.INSTALLATION_CODE else "device standard"


def _pass(measured: Measured, limit: Limit, compared: Comparison, near: float) -> str:
    del compared, near
    return f"{measured} meets the {_whose(limit)}: {limit}."


def _fail(measured: Measured, limit: Limit, compared: Comparison, near: float) -> str:
    text = f"{measured} does not meet the {_whose(limit)}: {limit}."
    if compared.margin is None or not 0 > compared.margin >= -2 * near:
        return text
    out = format_quantity(abs(compared.margin), limit.unit)
    return text.removesuffix(".") + f"; it is slightly outside, by {out}."


def _borderline(measured: Measured, limit: Limit, compared: Comparison, near: float) -> str:
    del near
    assert compared.margin is not None  # noqa: S101  # only a figure can be borderline
    side = "inside" if compared.margin >= 0 else "outside"
    distance = format_quantity(abs(compared.margin), limit.unit)
    percent = format_number(100 * (compared.conformance or 0.0), 2)
    return (
        f"{measured} is {distance} {side} the {_whose(limit)} ({limit}), "
        f"within the instrument's uncertainty; it is {percent} % sure to meet it."
    )


def _cannot_say(measured: Measured, limit: Limit, compared: Comparison, near: float) -> str:
    del compared, near
    return (
        f"{measured} stops short of the limit ({limit}), "
        "so it does not tell on which side the device is."
    )


SENTENCES = {
    Outcome.PASS: _pass,
    Outcome.FAIL: _fail,
    Outcome.BORDERLINE: _borderline,
    Outcome.CANNOT_SAY: _cannot_say,
}
