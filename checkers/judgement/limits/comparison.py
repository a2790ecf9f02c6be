"""A reading against a limit, with the instrument's uncertainty (JCGM 106:2012)."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import NormalDist

from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.verdicts import Outcome

STANDARD_NORMAL = NormalDist()


@dataclass(frozen=True, slots=True)
class Comparison:
    """How a reading stands against its limit.

    `margin` is the distance to the nearest limit (negative outside), in the
    reading's unit; `conformance` is the probability that the true value is inside.
    Both are None where the reading is only a bound.
    """

    outcome: Outcome
    margin: float | None = None
    conformance: float | None = None


def conformance_probability(value: float, limit: Limit, standard_uncertainty: float) -> float:
    """Return the probability that the true value lies inside a limit.

    Inputs: the measured value, the limit and the standard uncertainty, in one unit.
    Result: a probability from 0 to 1.
    Assumptions: a normal distribution about the reading, nothing known beforehand.
    Source: [1] JCGM 106:2012, 7.3 and 7.4.
    """
    above = _distribution(limit.at_most, value, standard_uncertainty, missing=1.0)
    below = _distribution(limit.at_least, value, standard_uncertainty, missing=0.0)
    return max(0.0, above - below)


def _distribution(end: float | None, value: float, spread: float, *, missing: float) -> float:
    return missing if end is None else STANDARD_NORMAL.cdf((end - value) / spread)


def compare(
    measured: Measured, limit: Limit, expanded_uncertainty: float, confidence: float
) -> Comparison:
    """Judge a reading against a limit.

    Inputs: the reading, a figure or a bound; the limit [its unit]; the expanded
    uncertainty with coverage factor 2 [its unit]; the conformance probability
    asked for, above one half.
    Result: a Comparison. A figure passes, or fails, only where that is at least
    as probable as asked for; between, it is borderline. A bound decides only where
    all values it allows fall on one side, and a word without a figure never decides.
    Source: [1] JCGM 106:2012, 8.3.2 (guarded acceptance) and 8.3.3 (guarded rejection).
    """
    if not measured.is_number:
        return Comparison(Outcome.CANNOT_SAY)
    if measured.said is Said.MORE_THAN:
        return Comparison(_outcome_of_more_than(measured.value, limit))
    if measured.said is Said.LESS_THAN:
        return Comparison(_outcome_of_less_than(measured.value, limit))
    inside = conformance_probability(measured.value, limit, expanded_uncertainty / 2)
    outcome = Outcome.BORDERLINE
    if inside >= confidence:
        outcome = Outcome.PASS
    elif inside <= 1 - confidence:
        outcome = Outcome.FAIL
    return Comparison(outcome, margin_to(measured.value, limit), inside)


def margin_to(value: float, limit: Limit) -> float:
    """Return the distance to the nearest end of a limit, negative outside, in the value's unit."""
    room = [limit.at_most - value] if limit.at_most is not None else []
    room += [value - limit.at_least] if limit.at_least is not None else []
    return round(min(room), 9)


def _outcome_of_more_than(bound: float, limit: Limit) -> Outcome:
    if limit.at_most is not None:
        return Outcome.FAIL if bound >= limit.at_most else Outcome.CANNOT_SAY
    decided = limit.at_least is not None and bound >= limit.at_least
    return Outcome.PASS if decided else Outcome.CANNOT_SAY


def _outcome_of_less_than(bound: float, limit: Limit) -> Outcome:
    if limit.at_least is not None:
        return Outcome.FAIL if bound <= limit.at_least else Outcome.CANNOT_SAY
    decided = limit.at_most is not None and bound <= limit.at_most
    return Outcome.PASS if decided else Outcome.CANNOT_SAY
