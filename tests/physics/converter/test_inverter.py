"""The switching pattern of the inverter's output."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from checkers.physics.converter.circuits import PARTS
from checkers.physics.converter.inverter import leg_positions


def test_the_output_is_on_each_pole_half_of_a_motor_period() -> None:
    """Over a whole motor period, pulses of more and less than half balance exactly."""
    legs = leg_positions(PARTS, 5)

    assert sum(legs) == len(legs) // 2
    assert len(legs) == 5 * PARTS.steps_per_cycle


def test_each_carrier_period_holds_one_pulse() -> None:
    """The output goes up once and down once in each carrier period."""
    legs = leg_positions(PARTS, 5)

    assert sum(after > before for before, after in pairwise(legs)) == 5 * PARTS.carrier_ratio


def test_the_width_follows_the_motor_wave() -> None:
    """A quarter motor period in, the share of the upper pole is half plus half the modulation."""
    legs = leg_positions(PARTS, 5)
    quarter = len(legs) // 4
    period = PARTS.steps_per_cycle // PARTS.carrier_ratio
    around = legs[quarter - 5 * period : quarter + 5 * period]

    assert sum(around) / len(around) == pytest.approx(0.5 + 0.5 * PARTS.modulation, abs=0.01)


def test_without_modulation_it_is_a_plain_square_wave() -> None:
    """With no motor voltage asked for, every pulse is half a carrier period."""
    legs = leg_positions(replace(PARTS, modulation=0.0), 1)
    period = PARTS.steps_per_cycle // PARTS.carrier_ratio

    assert {sum(legs[at : at + period]) for at in range(0, len(legs), period)} == {period // 2}
