"""What a cause, with the other readings, would lead one to expect of a test: in words."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp

from checkers.domain.quantities.measured_value import Measured
from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.quantities.ranges import range_in_words
from checkers.judgement.inference.weighing.likelihood import shown_below
from checkers.judgement.inference.weighing.samples import Columns
from checkers.physics.response.attempt import Attempt
from checkers.wording.book import part

REACH = 1.0  # deviations of one member beyond its mean
HARDLY, NEARLY = 0.03, 0.97


def weights_of(logs: Sequence[float]) -> list[float]:
    """Return weights that sum to 1 from their logarithms."""
    greatest = max(logs)
    weights = [exp(one - greatest) for one in logs]
    whole = sum(weights)
    return [one / whole for one in weights]


def expected_words(
    columns: Columns, weights: Sequence[float], attempt: Attempt, measured: Measured
) -> str:
    """Return what would be expected: 52 mA to 95 mA; no trip (98 %); operates (70 %).

    Inputs: a cloud's predictions for a test; the members' weights; the test; what was
    shown, whose bound is the window where it is one. Result: about eight in ten would lie in it.
    """
    if attempt.is_button:
        return _button_words(_mean(columns.shows, weights))
    bound = measured.value if measured.is_number and _is_bound(measured) else _window(attempt)
    chance = _mean(shown_below(columns, bound), weights)
    unit = "mA" if attempt.is_ramp else "ms"
    if chance < HARDLY:
        return part("inference.no-trip-within", bound=format_quantity(bound, unit))
    words = _range_words(columns, weights, unit)
    if chance > NEARLY:
        return words
    return part("inference.or-no-trip", range=words, chance=percent(1.0 - chance))


def _is_bound(measured: Measured) -> bool:
    return measured.said in ("more than", "less than")


def _window(attempt: Attempt) -> float:
    return max(attempt.current, 3.0 * attempt.rated) if attempt.is_ramp else attempt.window


def _range_words(columns: Columns, weights: Sequence[float], unit: str) -> str:
    """Return about where eight in ten of the figures would lie."""
    rows = zip(weights, columns.shows, columns.mean, columns.spread, strict=True)
    shown = [(weight * shows, mean, spread) for weight, shows, mean, spread in rows if shows]
    low = _quantile([(mean - REACH * spread, share) for share, mean, spread in shown], 0.1)
    high = _quantile([(mean + REACH * spread, share) for share, mean, spread in shown], 0.9)
    return range_in_words(max(0.0, low), high, unit, 2)


def _quantile(values: list[tuple[float, float]], part: float) -> float:
    """Return the value below which a part of the weight lies."""
    wanted = part * sum(share for _, share in values)
    reached = 0.0
    for value, share in sorted(values):
        reached += share
        if reached >= wanted:
            return value
    return values[-1][0]


def _button_words(chance: float) -> str:
    if chance >= 0.5:
        return part("inference.expected-to-operate", chance=percent(chance))
    return part("inference.expected-not-to-operate", chance=percent(1.0 - chance))


def _mean(values: Sequence[float], weights: Sequence[float]) -> float:
    return sum(value * weight for value, weight in zip(values, weights, strict=True))


def percent(share: float) -> str:
    """Return a probability in words: 83 %, under 1 %."""
    if share < 0.01:
        return part("inference.under-one-per-cent")
    if share >= 0.995:
        return part("inference.over-99-per-cent")
    return part("inference.per-cent", figure=format_number(100.0 * share, 2))
