"""Figures of the installation codes against other published texts.

[1] A German trade journal: 9 mA of standing leakage on a 30 mA device.
[2] A trade article on DIN VDE 0100-410:2018-10: 1 s in TN at DC from 120 V to 230 V.
[3] A British trade blog: distribution circuits in TT, 1 s.
[4] A British training handbook: 0.5 times the rating, no operation within 2 s.
[5] Government notices of Western Australia, New South Wales and the Northern Territory: no type AC
    from 1 May 2023.
[6] A trade engineer's table of the greatest electrode resistance, 1667 ohm for 30 mA.
"""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.codes.registry import CODES
from checkers.domain.limits.tables import rows_in

DAY = date(2026, 11, 24)


@pytest.mark.parametrize("code", ["iec", "gb", "de", "nl"])
def test_nine_milliamperes_may_stand_on_a_30_milliampere_device(code: str) -> None:
    """Source [1]."""
    (row,) = rows_in(CODES[code].tables["standing-leakage"], on=DAY)

    assert row.at_most(30.0) == 9.0


@pytest.mark.parametrize("code", ["iec", "gb", "de"])
def test_tn_dc_at_mains_voltage_disconnects_in_one_second(code: str) -> None:
    """Source [2]; five seconds stood in the older texts."""
    (row,) = rows_in(
        CODES[code].tables["disconnection-time"],
        on=DAY,
        system="tn",
        supply="dc",
        circuit="final",
        voltage=230.0,
    )

    assert row.at_most() == 1000.0


def test_tt_distribution_circuits_disconnect_in_one_second() -> None:
    """Source [3]."""
    (row,) = rows_in(
        CODES["gb"].tables["disconnection-time"], on=DAY, system="tt", circuit="distribution"
    )

    assert row.at_most() == 1000.0


def test_the_british_no_trip_test_of_2008_lasts_two_seconds_at_half_the_rating() -> None:
    """Source [4]."""
    (test,) = [one for one in CODES["gb"].tests_on(date(2012, 1, 1)) if one.test == "no-trip"]

    assert (test.multiple, test.lasting) == (0.5, 2000.0)


@pytest.mark.parametrize(
    ("day", "accepted"), [(date(2023, 4, 30), True), (date(2023, 5, 1), False)]
)
def test_type_ac_ends_in_australia_on_the_day_three_regulators_name(
    day: date, accepted: bool
) -> None:
    """Source [5]."""
    refused = [rule for rule in CODES["au"].type_rules_on(day) if rule.standing == "not-accepted"]

    assert (not refused) is accepted


def test_the_touch_voltage_gives_the_greatest_electrode_resistance_of_the_trade_table() -> None:
    """Source [6]: 50 V over 30 mA."""
    (row,) = rows_in(CODES["gb"].tables["touch-voltage"], on=DAY, supply="ac")

    assert round((row.at_most() or 0.0) / 0.030) == 1667
