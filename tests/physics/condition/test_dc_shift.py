"""By how much smooth DC raises the trip current, read off the model of the core."""

from __future__ import annotations

from itertools import pairwise
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.physics.condition.dc_shift import BIASES, blinding_dc, dc_shift
from checkers.physics.core.device_under_bias import trip_current
from checkers.physics.core.parameters import CORE, Scatter
from checkers.physics.scatter import SCATTER

SHIFTED = ("AC", "A", "F")


@pytest.mark.parametrize("device_type", SHIFTED)
@pytest.mark.parametrize(
    "over_own", [0.15, 0.3, 0.5, 0.75, 1.0, 1.1, 1.6, 2.5, 3.7, 6.0, 8.5, 15.0, 40.0, 100.0]
)
def test_reading_off_agrees_with_the_core_model(device_type: str, over_own: float) -> None:
    """Between its points the curve is within a few percent of the model itself."""
    own = 30.0 * SCATTER.own_trip_share.typical
    core = CORE.cores[device_type, Scatter.TYPICAL]
    modelled = trip_current(core, own, over_own * own) / own

    assert dc_shift(device_type, 30.0, over_own, 0.5) == pytest.approx(modelled, rel=0.04)


@given(st.sampled_from(SHIFTED), st.floats(0.0, 100.0), st.floats(0.0, 1.0))
def test_a_shift_is_positive_and_no_dc_shifts_nothing(
    device_type: str, over_own: float, standing: float
) -> None:
    """No DC leaves the trip current as it is; a little may lower it, none makes it vanish."""
    assert dc_shift(device_type, 30.0, 0.0, standing) == 1.0
    assert dc_shift(device_type, 30.0, over_own, standing) > 0.9


@pytest.mark.parametrize("device_type", ["B", "B+"])
def test_a_type_that_senses_smooth_dc_is_not_blinded(device_type: str) -> None:
    """Types B and B+ trip on the DC itself."""
    assert dc_shift(device_type, 30.0, 2.0, 0.5) == 1.0
    assert blinding_dc(device_type, 30.0) == inf


def test_the_more_dc_a_type_bears_the_more_it_takes_to_blind_it() -> None:
    """Type AC is blinded first, then A, then F."""
    least = [blinding_dc(device_type, 30.0) for device_type in SHIFTED]

    assert least == sorted(least)
    assert all(
        dc_shift(one, 30.0, at, 0.5) == pytest.approx(SCATTER.blinding_shift.typical)
        for one, at in zip(SHIFTED, least, strict=True)
    )


def test_the_points_where_the_core_is_asked_rise_from_none() -> None:
    """Between two of them a straight line is drawn, which needs them in order."""
    assert BIASES[0] == 0.0
    assert all(low < high for low, high in pairwise(BIASES))
