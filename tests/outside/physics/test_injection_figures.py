"""The injection set-up against published figures: preferred values and extra-low voltage."""

from __future__ import annotations

import pytest

from checkers.physics.core.injection import Injection, nearest_preferred
from checkers.physics.core.injection_rules import INJECTION

# IEC 60063, series E24 (from memory; the same list stands in every resistor catalogue).
E24 = """
1.0 1.1 1.2 1.3 1.5 1.6 1.8 2.0 2.2 2.4 2.7 3.0
3.3 3.6 3.9 4.3 4.7 5.1 5.6 6.2 6.8 7.5 8.2 9.1
"""
# Where the published value is not the rounded power of ten: kept from older series.
KEPT_FROM_OLDER_SERIES = {2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 8.2}


def test_the_preferred_values_are_the_published_series() -> None:
    """All twenty-four, in order."""
    published = [float(one) for one in E24.split()]

    assert [one / 10.0 for one in INJECTION.preferred_values] == published


def test_the_series_steps_by_the_twenty_fourth_root_of_ten() -> None:
    """The rule of the series: 10^(n/24) rounded, but for eight values kept from older ones."""
    ruled = [round(10.0 ** (number / 24.0), 1) for number in range(24)]
    pairs = zip(ruled, INJECTION.preferred_values, strict=True)
    different = {value / 10.0 for rule, value in pairs if abs(rule - value / 10.0) > 0.01}

    assert different == KEPT_FROM_OLDER_SERIES


def test_neighbours_meet_within_the_tolerance_of_the_series() -> None:
    """Resistors within 5 % leave next to no gap: that is why there are twenty-four."""
    for number in range(240):
        wanted = 10.0 ** (number / 240.0)
        assert nearest_preferred(wanted) == pytest.approx(wanted, rel=0.08)


@pytest.mark.parametrize(
    ("volts", "turns", "dc", "ohms", "milliamps"),
    [
        (12.0, 10, 50.0, 2400.0, 5.0),
        (12.0, 1, 6.0, 2000.0, 6.0),
        (24.0, 20, 250.0, 2000.0, 12.0),
        (5.0, 4, 60.0, 330.0, 15.15),
    ],
)
def test_set_ups_worked_by_hand(
    volts: float, turns: int, dc: float, ohms: float, milliamps: float
) -> None:
    """R = U n / I by hand, rounded to the series: 1920 to 2000, 333 to 330 ohm."""
    injection = Injection(volts, turns, dc)

    assert injection.standard_value == ohms
    assert injection.current == pytest.approx(milliamps, rel=1e-3)


def test_the_source_is_within_extra_low_voltage() -> None:
    """IEC 60364-4-41, 414.4.5 (memory): 60 V DC in the dry, half of the 120 V of SELV."""
    assert INJECTION.supply.value == 60.0
    assert INJECTION.supply.citation.evidence == "memory"
