"""The set-up that injects DC: Ampère, Ohm, Joule and the preferred values."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.physics.core.injection import Injection, nearest_preferred
from checkers.physics.core.injection_rules import INJECTION

VOLTAGES = st.floats(1.0, 60.0)
TURNS = st.integers(1, 100)
CURRENTS = st.floats(1.0, 1000.0)


@given(VOLTAGES, TURNS, CURRENTS)
def test_the_exact_resistance_gives_the_dc_wanted(volts: float, turns: int, dc: float) -> None:
    """Turns times volts over ohms is the residual DC (Ampère and Ohm)."""
    resistance = Injection(volts, turns, dc).resistance

    assert turns * 1000.0 * volts / resistance == pytest.approx(dc)


@given(VOLTAGES, TURNS, CURRENTS)
def test_the_standard_value_comes_within_half_a_step(volts: float, turns: int, dc: float) -> None:
    """The widest step of the series is from 13 to 15, so half a step is 7.4 % at most."""
    injection = Injection(volts, turns, dc)

    assert injection.dc_residual == pytest.approx(dc, rel=sqrt(15.0 / 13.0) - 1.0 + 1e-9)


@given(VOLTAGES, TURNS, CURRENTS)
def test_heat_is_current_squared_times_resistance(volts: float, turns: int, dc: float) -> None:
    """Joule's law, with the current the standard value really gives."""
    injection = Injection(volts, turns, dc)
    amps = injection.current / 1000.0

    assert injection.power == pytest.approx(amps * amps * injection.standard_value)


@given(VOLTAGES, TURNS, CURRENTS)
def test_the_rating_leaves_a_factor_of_two(volts: float, turns: int, dc: float) -> None:
    """The rating is the least one of at least twice the heat; none where that is not made."""
    injection = Injection(volts, turns, dc)
    enough = [one for one in INJECTION.power_ratings if one >= 2.0 * injection.power]

    assert injection.power_rating == (min(enough) if enough else None)


@given(VOLTAGES, TURNS, CURRENTS)
def test_the_tolerance_of_the_resistor_bounds_the_dc(volts: float, turns: int, dc: float) -> None:
    """Within 5 % in resistance is within about 5 % in current, either way."""
    injection = Injection(volts, turns, dc)
    low, high = injection.dc_residual_range

    assert low == pytest.approx(injection.dc_residual / 1.05)
    assert high == pytest.approx(injection.dc_residual / 0.95)


@pytest.mark.parametrize(
    ("wanted", "nearest"),
    [
        (2400.0, 2400.0),
        (96.0, 100.0),
        (0.0963, 0.1),
        (1234.0, 1200.0),
        (95_000.0, 91_000.0),
        (95_500.0, 100_000.0),
        (1.0, 1.0),
        (9.99, 10.0),
        (1e7, 1e7),
    ],
)
def test_the_nearest_value_may_stand_in_the_next_decade(wanted: float, nearest: float) -> None:
    """Ratios decide, in any decade, and nothing is left over from binary fractions."""
    assert nearest_preferred(wanted) == nearest
