"""Stated probabilities come true as often as they say, on devices drawn from the model.

The draws are made apart from the clouds that explain compares with, so the test finds
likelihoods that are wrong and clouds that are too small. It cannot find a model that
differs from real devices; readings from practice do that.
"""

from __future__ import annotations

from functools import cache
from math import sqrt

import pytest

from build_tools.benches.calibration import Draw, draws, reliability

pytestmark = pytest.mark.slow  # it measures: `bench calibration` prints the same table

COUNT = 600
ALLOWED = 0.03  # for clouds of finite size
SURE = 3.0  # standard deviations of a share
BY_CHANCE = 1.0 / 18.0


@cache
def drawn() -> tuple[Draw, ...]:
    """Return the draws, made once."""
    return tuple(draws(COUNT))


def test_every_step_of_the_reliability_table_is_as_true_as_it_says() -> None:
    """Within three standard deviations of a share, and what small clouds may cost."""
    for step in reliability(drawn()):
        deviation = sqrt(step.stated * (1.0 - step.stated) / step.count)

        assert abs(step.true - step.stated) <= ALLOWED + SURE * deviation, step


def test_eighty_percent_means_eight_in_ten() -> None:
    """Of all causes stated with 65 to 95 %, about that share is true."""
    inside = [
        (chance, code == one.cause)
        for one in drawn()
        for code, chance in one.explained
        if 0.65 <= chance <= 0.95
    ]
    stated = sum(chance for chance, _ in inside) / len(inside)
    true = sum(hit for _, hit in inside) / len(inside)

    assert len(inside) >= 40
    assert abs(true - stated) <= ALLOWED + SURE * sqrt(stated * (1.0 - stated) / len(inside))


def test_the_first_cause_is_right_far_more_often_than_by_chance() -> None:
    """From three to six readings, with eighteen causes alike often."""
    named = sum(one.named for one in drawn()) / COUNT

    assert named > 5 * BY_CHANCE


def test_the_brier_score_beats_knowing_nothing() -> None:
    """Alike probabilities for all causes score one less their share."""
    assert sum(one.brier for one in drawn()) / COUNT < 0.8 * (1.0 - BY_CHANCE)
