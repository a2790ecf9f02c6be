"""A reading against a limit, with the instrument's uncertainty (JCGM 106:2012)."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import NormalDist

from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.verdicts import Outcome

STANDARD_NORMAL = NormalDist()


@dataclass(frozen=True, slots=True)
class Limits:
    """What a value may be: at least, at most, or both, in the value's own unit."""

    at_least: float | None = None
    at_most: float | None = None


@dataclass(frozen=True, slots=True)
class Comparison:
    """How a reading stands against its limits.

    `margin` is the distance to the nearest limit (negative outside), in the
    reading's unit; `conformance` is the probability that the true value is inside.
    Both are None where the reading is only a bound.
    """

    outcome: Outcome
    margin: float | None = None
    conformance: float | None = None


def conformance_probability(value: float, limits: Limits, standard_uncertainty: float) -> float:
    """Return the probability that the true value lies inside the limits.

    Inputs: the measured value, the limits and the standard uncertainty, in one unit.
    Result: a probability from 0 to 1.
    Assumptions: a normal distribution about the reading, nothing known beforehand.
    Source: [1] JCGM 106:2012, 7.3 and 7.4.
    """
    above = _distribution(limits.at_most, value, standard_uncertainty, missing=1.0)
    below = _distribution(limits.at_least, value, standard_uncertainty, missing=0.0)
    return max(0.0, above - below)


def _distribution(limit: float | None, value: float, spread: float, *, missing: float) -> float:
    return missing if limit is None else STANDARD_NORMAL.cdf((limit - value) / spread)


def compare(
    measured: Measured, limits: Limits, expanded_uncertainty: float, confidence: float
) -> Comparison:
    """Judge a reading against limits.

    Inputs: the reading, a figure or a bound; the limits [its unit]; the expanded
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
        return Comparison(_outcome_of_more_than(measured.value, limits))
    if measured.said is Said.LESS_THAN:
        return Comparison(_outcome_of_less_than(measured.value, limits))
    inside = conformance_probability(measured.value, limits, expanded_uncertainty / 2)
    outcome = Outcome.BORDERLINE
    if inside >= confidence:
        outcome = Outcome.PASS
    elif inside <= 1 - confidence:
        outcome = Outcome.FAIL
    return Comparison(outcome, margin_to(measured.value, limits), inside)


def margin_to(value: float, limits: Limits) -> float:
    """Return the distance to the nearest limit, negative outside, in the value's unit."""
    room = [limits.at_most - value] if limits.at_most is not None else []
    room += [value - limits.at_least] if limits.at_least is not None else []
    return round(min(room), 9)


def _outcome_of_more_than(bound: float, limits: Limits) -> Outcome:
    if limits.at_most is not None:
        return Outcome.FAIL if bound >= limits.at_most else Outcome.CANNOT_SAY
    decided = limits.at_least is not None and bound >= limits.at_least
    return Outcome.PASS if decided else Outcome.CANNOT_SAY


def _outcome_of_less_than(bound: float, limits: Limits) -> Outcome:
    if limits.at_least is not None:
        return Outcome.FAIL if bound <= limits.at_least else Outcome.CANNOT_SAY
    decided = limits.at_most is not None and bound <= limits.at_most
    return Outcome.PASS if decided else Outcome.CANNOT_SAY
