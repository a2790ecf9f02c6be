"""The residual current as steps of a cycle."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from checkers.physics.core.primary_current import Shape, crowding_for, rms_of, steps_of


@pytest.mark.parametrize("shape", list(Shape))
@pytest.mark.parametrize("crowding", [1.0, 0.3, 0.05])
def test_the_steps_fill_one_cycle(shape: Shape, crowding: float) -> None:
    """However they are crowded, their lengths add up to 2π."""
    assert sum(length for _, length in steps_of(shape, crowding)) == pytest.approx(2.0 * pi)


@pytest.mark.parametrize("shape", list(Shape))
def test_the_steps_have_the_shape_s_rms_value(shape: Shape) -> None:
    """Summed over the steps, a peak of 1 has the r.m.s. value that is used for it."""
    square = sum(value * value * length for value, length in steps_of(shape, 1.0))

    assert sqrt(square / (2.0 * pi)) == pytest.approx(rms_of(shape, 1.0), rel=2e-3)


def test_much_dc_crowds_the_steps_round_the_negative_crest() -> None:
    """With DC of many times the trip current the shortest step is at the crest."""
    steps = steps_of(Shape.SINE, crowding_for(200.0))
    value, length = min(steps, key=lambda step: step[1])

    assert value == pytest.approx(-1.0, abs=1e-3)
    assert length < pi / 200.0
