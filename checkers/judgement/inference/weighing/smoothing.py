"""A member of a cloud stands for its neighbours too: devices that open a little sooner or later.

A cloud is thin where many times are known exactly: hardly a member opens at just the right
moment, though many would if they all opened a millisecond later. So each member is taken with
every common offset of its times, weighed by a normal distribution, which is done in closed form:
times that differ from one another still tell all they did.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import log
from typing import NamedTuple

from checkers.domain.quantities.measured_value import Measured, Said
from checkers.judgement.inference.weighing.samples import Columns
from checkers.physics.response.attempt import Attempt

# Chosen, of 0, 2 and 3 ms, for giving the true causes of drawn devices the most probability.
OFFSET_SPREAD = 3.0
NONE = (0.0, 0.0)
EXPLAINS = 4.0  # a figure further off than so many deviations is not explained by any offset


class Pulls(NamedTuple):
    """For each member: how firmly a time is known [1/ms²], and how far it pulls [1/ms]."""

    firmness: list[float]
    pull: list[float]


def pulls_of(columns: Columns, attempt: Attempt, measured: Measured, wider: float) -> Pulls | None:
    """Return how a time pulls at each member's offset, or None for anything but a time's figure.

    Inputs: the cloud's predictions; the test; the reading; by how much spreads are widened.
    """
    if measured.said is not Said.FIGURE or attempt.is_ramp:
        return None
    rows = zip(columns.shows, columns.mean, columns.spread, strict=True)
    pairs = [
        (1.0 / (wide * wide), score / wide)
        if shows
        and -EXPLAINS < (score := (measured.value - mean) / (wide := wider * spread)) < EXPLAINS
        else NONE
        for shows, mean, spread in rows
    ]
    return Pulls(*(list(column) for column in zip(*pairs, strict=True)))


def summed(pulls: Sequence[Pulls | None], members: int) -> Pulls:
    """Return the pulls of several times together."""
    counted = [one for one in pulls if one is not None]
    if not counted:
        return Pulls([0.0] * members, [0.0] * members)
    return Pulls(
        [sum(column) for column in zip(*(one.firmness for one in counted), strict=True)],
        [sum(column) for column in zip(*(one.pull for one in counted), strict=True)],
    )


def gains(pulls: Pulls) -> list[float]:
    """Return the logarithm of what a free common offset adds to each member's likelihood.

    Source: the integral of a product of normal densities over a normal offset, by
    completing the square.
    """
    variance = OFFSET_SPREAD * OFFSET_SPREAD
    return [
        0.5 * (pull * pull / (firm + 1.0 / variance) - log(1.0 + variance * firm)) if firm else 0.0
        for firm, pull in zip(*pulls, strict=True)
    ]


def without(whole: Pulls, part: Pulls) -> Pulls:
    """Return the pulls of all times but one."""
    return Pulls(
        [one - other for one, other in zip(whole.firmness, part.firmness, strict=True)],
        [one - other for one, other in zip(whole.pull, part.pull, strict=True)],
    )


def joined(few: Pulls, more: Pulls) -> Pulls:
    """Return the pulls of two lots of members as those of one."""
    return Pulls(few.firmness + more.firmness, few.pull + more.pull)
