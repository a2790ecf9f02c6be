"""Which times fail and which pass at a current: at a row, between two, below and beyond them."""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.judgement.case import Case
from checkers.judgement.limits.time_limits import BindingTimes, product_times


def limit(current: float, waveform: str = "ac", **device: str | float) -> BindingTimes:
    """Return the times of a 30 mA type A RCCB, or of another device, at a current [mA]."""
    described = {"type": "A", "rated_residual_current": 30.0, **device}
    case = Case(
        Device(**described),  # type: ignore[arg-type]  # the fields are of several kinds
        Circuit(),
        Instrument(),
        CODES["iec"],
        date(2026, 11, 24),
    )
    return product_times(case, waveform, current)


@pytest.mark.parametrize(
    ("current", "fails", "passes"),
    [
        (29.0, None, None),
        (30.0, 300, 300),
        (45.0, 300, 150),
        (60.0, 150, 150),
        (100.0, 150, 40),
        (150.0, 40, 40),
        (200.0, 40, 40),
        (200_000.0, 40, 40),
        (600_000.0, 40, None),
    ],
)
def test_the_greatest_time_is_stricter_to_pass_than_to_fail(
    current: float, fails: float | None, passes: float | None
) -> None:
    """0.3, 0.15, 0.04 s at 30, 60, 150 mA, and 0.04 s from 5 A to 500 A (IEC 61008-1)."""
    most = limit(current).most

    assert (fails, passes) == (most.fails, most.passes)


@pytest.mark.parametrize(
    ("current", "fails", "passes"),
    [
        (80.0, 130, 130),
        (100.0, 130, 130),
        (150.0, 60, 130),
        (200.0, 60, 60),
        (300.0, 50, 60),
        (1_000.0, 40, 50),
        (5_000.0, 40, 40),
        (300_000.0, None, 40),
    ],
)
def test_the_least_time_is_stricter_to_pass_than_to_fail(
    current: float, fails: float | None, passes: float | None
) -> None:
    """0.13, 0.06, 0.05, 0.04 s at 1, 2, 5 times and from 5 A to 200 A (IEC 61008-1, S)."""
    least = limit(current, rated_residual_current=100.0, delay="S").least

    assert (fails, passes) == (least.fails, least.passes)


def test_a_limit_names_the_currents_on_either_side() -> None:
    """What passes at 45 mA is due at 60 mA, and what fails there is promised at 30 mA."""
    found = limit(45.0)

    assert (found.most.held, found.most.due) == (30.0, 60.0)
    assert [row.when.multiple for row in found.rows] == [1.0, 2.0]


@pytest.mark.parametrize(
    ("made_to", "current", "fails", "passes", "option"),
    [
        ("", 150.0, 40, 40, 250.0),
        ("", 140.0, 150, 40, None),
        ("", 250.0, 40, 40, None),
        ("IEC 61008-1, 0.25 A", 150.0, 150, 40, 250.0),
        ("IEC 61008-1, 0.25 A", 250.0, 40, 40, None),
    ],
)
def test_the_makers_choice_moves_the_shortest_time(
    made_to: str, current: float, fails: float, passes: float, option: float | None
) -> None:
    """40 ms at five times the rating, or at 0.25 A where the maker declares it (IEC 61008-1)."""
    found = limit(current, made_to=made_to)

    assert (fails, passes) == (found.most.fails, found.most.passes)
    assert found.option_at == option


def test_two_tables_are_both_kept() -> None:
    """A G device keeps the general greatest time, and 10 ms at least (Austrian trade)."""
    found = limit(30.0, delay="G")

    assert (found.promised.at_least, found.promised.at_most) == (10, 300)


def test_a_delay_without_figures_leaves_its_greatest_time_open() -> None:
    """Above 0.06 s the manufacturer states the break time (IEC 60947-2, annex B, from memory)."""
    found = limit(600.0, form="cbr", rated_residual_current=300.0, delay=500.0)

    assert (found.promised.at_least, found.promised.at_most) == (500, None)
    assert limit(900.0, form="cbr", rated_residual_current=300.0, delay=500.0).least.passes == 500


def test_the_makers_other_choice_is_read_from_its_row() -> None:
    """On a half wave it is 0.25 A times 1.4 (IEC 61008-1), and 150 mA is none of the two."""
    assert limit(210.0, "half-wave").option_at == 350.0
    assert limit(150.0, "half-wave").option_at is None
