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
from checkers.wording.book import part
from checkers.wording.finding import finding
from checkers.wording.reading_names import name_of


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
    known = {"measured": reading.measured, "limit": limit, "whose": part(WHOSE[limit.judges])}
    return finding(
        f"reading.{_code(compared, near)}",
        compared.outcome,
        limit.judges,
        known | _distance(limit, compared),
        about=name_of(reading),
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


def _code(compared: Comparison, near: float) -> str:
    if compared.outcome is not Outcome.FAIL:
        return CODES[compared.outcome]
    slightly = compared.margin is not None and 0 > compared.margin >= -2 * near
    return "misses-limit-slightly" if slightly else "misses-limit"


def _distance(limit: Limit, compared: Comparison) -> dict[str, object]:
    """Return how far a figure lies from its limit and on which side, and how sure that is [%]."""
    if compared.margin is None:
        return {}
    return {
        "distance": format_quantity(abs(compared.margin), limit.unit),
        "side": part("reading.inside" if compared.margin >= 0 else "reading.outside"),
        "sure": format_number(100 * (compared.conformance or 0.0), 2),
    }


CODES = {
    Outcome.PASS: "meets-limit",
    Outcome.BORDERLINE: "near-limit",
    Outcome.CANNOT_SAY: "stops-short-of-limit",
}
WHOSE = dict.fromkeys(Judges, "reading.device-standard") | {
    Judges.INSTALLATION_CODE: "reading.installation-rule"
}
