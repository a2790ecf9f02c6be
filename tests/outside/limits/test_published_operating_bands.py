"""Operating bands against published values that our tables were not taken from.

[1] IEC 62955:2018, table 20 (O.8.1), read: 0.35, 0.25 and 0.11 times the rating as lower limits
    at 0, 90 and 135 degrees, with 2 times the rating up to 6 mA and 1.4 times above as upper one.
[2] IEC 62752:2024, table 13, read: composite current from 0.5 to 1.4 times the rating.
[3] A wiki on electrical installation by a switchgear maker: a 30 mA type B lets almost 60 mA of
    smooth DC pass.
[4] A note by an RCD maker: 12 mA on a half-wave ramp of a 30 mA type A is in order, and was
    wrongly failed.
[5] A German trade article: a 30 mA device operates from 15 mA to 30 mA. A South African trade
    page says the same.
[6] A component distributor's note: a 30 mA device typically operates at about 22 mA.
[7] BS 7671:2018+A2:2022, 531.3.3, notes 1 to 3, as quoted in two places: 6 mA, 10 mA, and the
    higher of 0.4 times the rating and 10 mA.
"""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.limits.tables import rows, rows_in

DAY = date(2026, 11, 24)


def band(
    type_: str, rated: float, waveform: str, dc: float = 0.0, form: str = "rccb"
) -> tuple[float | None, float | None]:
    """Return the lower and the upper operating limit [mA]."""
    (row,) = rows(
        "operating-current",
        on=DAY,
        form=form,
        type=type_,
        rated=rated,
        waveform=waveform,
        dc_residual=dc,
    )
    return row.at_least(rated), row.at_most(rated)


@pytest.mark.parametrize(
    ("waveform", "lower"), [("half-wave", 0.35), ("half-wave-90", 0.25), ("half-wave-135", 0.11)]
)
@pytest.mark.parametrize(("rated", "upper"), [(6.0, 2.0), (30.0, 1.4), (300.0, 1.4)])
@pytest.mark.parametrize("form", ["rccb", "rcbo"])
def test_type_a_bands_by_delay_angle_are_those_of_the_charge_point_standard(
    waveform: str, lower: float, rated: float, upper: float, form: str
) -> None:
    """Source [1]; ours is cited from IEC 61008-1 and 61009-1."""
    found = band("A", rated, waveform, form=form)

    assert found == pytest.approx((lower * rated, upper * rated))


@pytest.mark.parametrize(
    ("rated", "waveform", "worked"),
    [
        (30.0, "half-wave", (10.5, 42.0)),
        (30.0, "half-wave-90", (7.5, 42.0)),
        (30.0, "half-wave-135", (3.3, 42.0)),
        (100.0, "half-wave", (35.0, 140.0)),
        (10.0, "half-wave", (3.5, 20.0)),
    ],
)
def test_type_a_bands_in_milliamperes_are_those_worked_out_by_hand(
    rated: float, waveform: str, worked: tuple[float, float]
) -> None:
    """0.35 x 30 = 10.5, 1.4 x 30 = 42, 0.11 x 30 = 3.3, and so on."""
    assert band("A", rated, waveform) == pytest.approx(worked)


def test_twelve_milliamperes_on_a_half_wave_is_inside_the_band() -> None:
    """Source [4]."""
    lower, upper = band("A", 30.0, "half-wave")

    assert lower is not None
    assert upper is not None
    assert lower < 12.0 < upper


def test_six_milliamperes_of_smooth_dc_raise_the_upper_limit_by_as_much() -> None:
    """42 + 6 = 48 mA; that the limit is read as the sum is from two makers' guides."""
    assert band("A", 30.0, "half-wave", dc=6.0) == pytest.approx((10.5, 48.0))


@pytest.mark.parametrize("type_", ["F", "B"])
def test_the_composite_band_is_that_of_the_charging_cable_standard(type_: str) -> None:
    """Source [2]."""
    assert band(type_, 30.0, "composite") == pytest.approx((15.0, 42.0))


def test_a_type_b_of_30_milliamperes_lets_almost_60_pass() -> None:
    """Source [3]."""
    assert band("B", 30.0, "smooth-dc")[1] == 60.0


@pytest.mark.parametrize("type_", ["AC", "A", "F", "B"])
@pytest.mark.parametrize("form", ["rccb", "rcbo", "socket", "portable", "cbr", "modular"])
def test_a_30_milliampere_device_operates_from_15_to_30_on_ac(type_: str, form: str) -> None:
    """Sources [5] and [6]: the typical 22 mA lies inside."""
    assert band(type_, 30.0, "ac", form=form) == (15.0, 30.0)


def test_the_figure_of_type_b_at_1_khz_meets_that_of_type_b_plus() -> None:
    """14 x 30 mA = 420 mA, the B+ limit of a maker's guide: consistent, no proof."""
    assert band("B", 30.0, "ac-1000-hz")[1] == 420.0
    assert band("B+", 30.0, "ac-above-1000-hz")[1] == 420.0


@pytest.mark.parametrize(
    ("type_", "rated", "published"),
    [
        ("A", 30.0, 6.0),
        ("F", 30.0, 10.0),
        ("B", 10.0, 10.0),
        ("B", 30.0, 12.0),
        ("B", 100.0, 40.0),
        ("B", 300.0, 120.0),
        ("B", 500.0, 200.0),
    ],
)
def test_smooth_dc_that_a_type_bears_is_worked_out_from_the_notes(
    type_: str, rated: float, published: float
) -> None:
    """Source [7]: the change-over for type B is at 25 mA."""
    (row,) = rows_in("iec-60364-5-53/smooth-dc-tolerated", on=DAY, type=type_, rated=rated)

    assert row.at_most(rated) == published


@pytest.mark.parametrize("rated", [10.0, 20.0, 25.0, 30.0, 300.0])
def test_a_type_b_bears_the_higher_of_the_two_values(rated: float) -> None:
    """Source [7], worked out with max()."""
    (row,) = rows_in("iec-60364-5-53/smooth-dc-tolerated", on=DAY, type="B", rated=rated)

    assert row.at_most(rated) == max(0.4 * rated, 10.0)


def test_nothing_may_be_assumed_of_type_ac() -> None:
    """Source [7] names no figure for it."""
    (row,) = rows_in("iec-60364-5-53/smooth-dc-tolerated", on=DAY, type="AC", rated=30.0)

    assert row.undeclared
    assert row.at_most(30.0) is None
