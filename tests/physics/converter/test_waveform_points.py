"""The thinned points draw the same line."""

from __future__ import annotations

import pytest

from checkers.physics.converter.circuits import CIRCUITS
from checkers.physics.converter.fault_current import simulate
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.waveform_points import drawn_points


@pytest.mark.parametrize("key", list(CIRCUITS))
def test_a_line_through_the_points_is_the_current(key: str) -> None:
    """Between the kept points, a straight line stays within one per cent of the span."""
    trace = simulate(CIRCUITS[key], Setting())
    points = drawn_points(trace)
    span = max(trace.currents) - min(trace.currents)

    right = 1
    for at, current in enumerate(trace.currents):
        time = (at + 1) * trace.step
        while points[right][0] < time - 1e-3:
            right += 1
        (before, start), (after, end) = points[right - 1], points[right]
        drawn = start + (end - start) * (time - before) / (after - before)
        assert abs(drawn - current) < 0.01 * span


@pytest.mark.parametrize("key", list(CIRCUITS))
def test_there_are_far_fewer_points_than_steps(key: str) -> None:
    """The points are at most a quarter of the steps, from the first to the last."""
    trace = simulate(CIRCUITS[key], Setting())
    points = drawn_points(trace)

    assert len(points) <= len(trace.currents) / 4
    assert points[0][0] == pytest.approx(trace.step, abs=1e-3)
    assert points[-1][0] == pytest.approx(20.0 * trace.cycles, abs=1e-3)
