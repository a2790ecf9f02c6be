"""Break times against published values that our tables were not taken from.

[1] Trade magazine for building engineers, table of RCD times at verification: BS EN 61008 and
    61009 general 300 ms and S 130 to 500 ms at the rating; BS 4293 200 ms, and with a delay
    200 ms + 50 % of it to 200 ms + 100 % of it.
[2] Two data sheets of RCCBs, one of them delayed: 300 ms at once and 40 ms at five times the
    rating; delayed 130 to 500 ms and 50 to 150 ms.
[3] Primer on RCDs by a switchgear maker: which times an RCD keeps in TN (fault current far above
    five times the rating) and in TT (above twice the rating).
[4] IEC 62752:2024, tables 2 and 4 and clause 9.7.3.3: the same pattern for another device.
[5] British trade notes on type A: 350 mA as the current for 40 ms on a half wave.
"""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.limits.tables import TABLES, rows, rows_in

DAY = date(2026, 11, 24)


def times(delay: str, rated: float, current: float, **asked: str) -> tuple[float | None, ...]:
    """Return the least and the greatest time [ms] of an RCCB at a test current [mA]."""
    asked = {"form": "rccb", "type": "A", "waveform": "ac"} | asked
    found = rows("trip-time", on=DAY, delay=delay, rated=rated, current=current, **asked)
    (row,) = found
    return row.at_least(rated), row.at_most(rated)


@pytest.mark.parametrize(
    ("delay", "rated", "multiple", "published"),
    [
        ("none", 30.0, 1.0, (None, 300.0)),  # [1], [2]
        ("none", 30.0, 5.0, (None, 40.0)),  # [2]
        ("S", 100.0, 1.0, (130.0, 500.0)),  # [1], [2]
        ("S", 100.0, 5.0, (50.0, 150.0)),  # [2]
    ],
)
def test_rccb_times_are_those_of_the_trade_table_and_the_data_sheets(
    delay: str, rated: float, multiple: float, published: tuple[float | None, float]
) -> None:
    """Sources [1] and [2], not the page the table was copied from."""
    assert times(delay, rated, multiple * rated) == published


@pytest.mark.parametrize(
    ("delay", "rated", "multiple", "published"),
    [
        ("none", 30.0, 5.0, 40.0),
        ("S", 300.0, 5.0, 150.0),
        ("none", 30.0, 2.0, 150.0),
        ("S", 300.0, 2.0, 200.0),
    ],
)
def test_times_that_keep_the_disconnection_times_are_those_of_the_primer(
    delay: str, rated: float, multiple: float, published: float
) -> None:
    """Source [3]: at five times the rating in TN, at twice the rating in TT."""
    greatest = times(delay, rated, multiple * rated)[1]

    assert greatest == published
    (tn,) = rows_in(
        "iec-60364-4-41/disconnection-times",
        on=DAY,
        system="tn" if multiple == 5.0 else "tt",
        supply="ac",
        circuit="final",
        voltage=230.0,
    )
    assert published <= (tn.at_most() or 0.0)


@pytest.mark.parametrize(("multiple", "published"), [(1.0, 300.0), (2.0, 150.0), (5.0, 40.0)])
def test_ac_times_have_the_pattern_of_the_charging_cable_standard(
    multiple: float, published: float
) -> None:
    """Source [4], table 2, read in the text."""
    assert times("none", 30.0, 30.0 * multiple)[1] == published


@pytest.mark.parametrize(("multiple", "published"), [(2.0, 300.0), (4.0, 150.0), (10.0, 40.0)])
@pytest.mark.parametrize("waveform", ["two-pulse", "three-pulse"])
def test_type_b_times_have_the_pattern_of_the_charging_cable_standard(
    multiple: float, published: float, waveform: str
) -> None:
    """Source [4], table 4, read in the text; ours is cited from IEC 62423."""
    found = times("none", 30.0, 30.0 * multiple, type="B", waveform=waveform)

    assert found[1] == published


@pytest.mark.parametrize("rated", [30.0, 100.0, 300.0])
@pytest.mark.parametrize(("ac", "time"), [(1.0, 300.0), (2.0, 150.0), (5.0, 40.0)])
def test_half_wave_currents_are_the_ac_ones_times_1_4(rated: float, ac: float, time: float) -> None:
    """Source [4], clause 9.7.3.3 a): the AC times at 1.4 times the AC currents."""
    found = times("none", rated, 1.4 * ac * rated, waveform="half-wave")

    assert found[1] == time


def test_the_half_wave_current_for_a_quarter_ampere_is_350_milliamperes() -> None:
    """Source [5], and 0.25 A times 1.4; for small ratings 0.25 A times 2 (from memory)."""
    assert times("none", 30.0, 350.0, waveform="half-wave")[1] == 40.0
    assert times("none", 10.0, 2 * 250.0, waveform="half-wave")[1] == 40.0


@pytest.mark.parametrize(
    ("delay", "set_delay", "published"),
    [("none", None, (None, 200.0)), ("set", 100.0, (250.0, 300.0)), ("set", 60.0, (230.0, 260.0))],
)
def test_older_british_times_follow_the_rule_of_the_trade_table(
    delay: str, set_delay: float | None, published: tuple[float | None, float]
) -> None:
    """Source [1], worked out by hand: 200 + 0.5 x delay to 200 + 1.0 x delay."""
    asked = {"delay": delay, "set_delay": set_delay, "rated": 30.0, "multiple": 1.0}
    (row,) = rows("trip-time", on=DAY, made_to="bs-4293", **asked)

    assert (row.at_least(None, set_delay), row.at_most(None, set_delay)) == published


@pytest.mark.parametrize(
    ("rated", "option", "published"),
    [(10.0, "type-I", 40.0), (30.0, None, 300.0)],
)
def test_australian_times_are_those_a_distributor_prints(
    rated: float, option: str | None, published: float
) -> None:
    """A component distributor's note on AS/NZS 61009.1: 30 mA 300 ms, 10 mA 40 ms."""
    (row,) = rows_in("as-nzs-3760/operating-times", on=DAY, rated=rated, option=option)

    assert row.at_most() == published


def test_the_smallest_delay_of_a_breaker_module_is_60_milliseconds() -> None:
    """A maker's page on residual current modules: 0, 60, 100, 250, 500 and 1000 ms."""
    delayed = [
        row
        for row in TABLES["iec-60947-2/cbr-break-times"].rows
        if row.when.only("delay") == frozenset({"set"}) and row.when.multiple == 2.0
    ]

    assert [row.at_least(300.0, 60.0) for row in delayed if not row.undeclared] == [60.0, 60.0]
