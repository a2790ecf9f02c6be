"""Doing what explain proposes finds the cause sooner than doing anything at all.

Devices are drawn from the model apart from the clouds that explain compares with; the same
devices are asked in both orders, so the differences are paired.
"""

from __future__ import annotations

from math import sqrt
from statistics import fmean, stdev

import pytest

from build_tools.benches.next_test import CAUSE_CODES, device_of, gone

STEPS = 3
SURE = 3.0  # standard errors: by chance about once in a thousand


@pytest.mark.slow
def test_three_proposed_tests_tell_more_than_any_three() -> None:
    """With two devices of each cause, the true cause is more probable, beyond chance."""
    numbers = range(2 * len(CAUSE_CODES))
    proposed = [gone(device_of(one), "as-proposed", STEPS) for one in numbers]
    anything = [gone(device_of(one), "any-order", STEPS) for one in numbers]
    gains = [one[-1].truth - other[-1].truth for one, other in zip(proposed, anything, strict=True)]

    assert [one[0] for one in proposed] == [one[0] for one in anything]
    assert fmean(gains) > SURE * stdev(gains) / sqrt(len(gains))
    assert fmean(gains) > 0.15
    assert sum(one[-1].right for one in proposed) > sum(one[-1].right for one in anything)
