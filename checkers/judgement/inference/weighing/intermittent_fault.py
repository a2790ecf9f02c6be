"""A mechanism that sticks now and then: each reading is of an operation that stuck, or did not."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log

from checkers.domain.causes import REMAINDER
from checkers.judgement.inference.weighing.attempts import Noted
from checkers.judgement.inference.weighing.hypotheses import NOW_AND_THEN
from checkers.judgement.inference.weighing.likelihood import Strays, log_likelihoods
from checkers.judgement.inference.weighing.samples import (
    Columns,
    cloud,
    layer,
    predicted,
    predicted_layer,
)
from checkers.physics.condition.knowledge import Known
from checkers.physics.response.attempt import Attempt


def free_columns(known: Known, noted: Sequence[Noted], part: int) -> list[Columns]:
    """Return what each test would show where the mechanism does not stick: as if sound."""
    return [predicted_layer(REMAINDER, known, one.attempt, part) for one in noted]


def mixed_rows(
    stuck: Sequence[Sequence[float]],
    free: Sequence[Columns],
    noted: Sequence[Noted],
    strays: Strays,
    sticks: Sequence[float],
) -> list[list[float]]:
    """Return the log-likelihoods of readings that may have stuck, each by itself.

    Inputs: those of operations that stuck; what is shown where none sticks; the readings;
    the strays; for each member, the share of operations in which it sticks.
    """
    shares = [(log(share), log(1.0 - share)) for share in sticks]
    return [
        [
            _either(slow + one, quick + other)
            for one, other, (slow, quick) in zip(
                row, log_likelihoods(columns, of.attempt, of.measured, strays), shares, strict=True
            )
        ]
        for row, columns, of in zip(stuck, free, noted, strict=True)
    ]


def shares_of(known: Known, part: int) -> list[float]:
    """Return, for each member, the share of operations in which it sticks."""
    return [one.unit.sticks for one in layer(NOW_AND_THEN, known, part)]


def shown_either_way(
    known: Known, attempt: Attempt, count: int, weights: Sequence[float]
) -> tuple[Columns, list[float]]:
    """Return what a test would show, stuck and free together, with the weights of both."""
    stuck = predicted(NOW_AND_THEN, known, attempt, count)
    free = predicted(REMAINDER, known, attempt, count)
    sticks = [one.unit.sticks for one in cloud(NOW_AND_THEN, known, count)]
    columns = Columns(*([*one, *other] for one, other in zip(stuck, free, strict=True)))
    slow = [weight * share for weight, share in zip(weights, sticks, strict=True)]
    return columns, [*slow, *(one - other for one, other in zip(weights, slow, strict=True))]


def _either(one: float, other: float) -> float:
    greatest = max(one, other)
    return greatest + log(exp(one - greatest) + exp(other - greatest))
