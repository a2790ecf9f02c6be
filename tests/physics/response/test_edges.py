"""Edges of the response model that no likely draw comes near."""

from __future__ import annotations

from dataclasses import replace

import pytest

from checkers.physics.condition.dc_shift import dc_shift
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import COLUMNS, Lots
from checkers.physics.condition.sound_device import in_good_order
from checkers.physics.condition.under_cause import under_cause
from checkers.physics.converter.circuits import CIRCUITS
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import predict
from checkers.physics.response.timing import trip

KNOWN = Known(rated=30.0, type="A", loads="on")
MIDDLE = Lots(*[0.0] * 13, *[0.45] * (COLUMNS - 13))
TIME = Attempt("trip-time", 30.0, 30.0, loads="on")


def test_a_wrong_range_is_a_higher_rating_or_a_lower_one() -> None:
    """On the range of 100 mA more flows than was noted, on that of 10 mA less."""
    higher = under_cause("wrong-current", KNOWN, MIDDLE._replace(kind=0.1, side=0.2))
    lower = under_cause("wrong-current", KNOWN, MIDDLE._replace(kind=0.1, side=0.8))

    assert higher.handling.scale_one == pytest.approx(100.0 / 30.0)
    assert lower.handling.scale_one == pytest.approx(10.0 / 30.0)


def test_a_wrong_device_is_of_a_higher_rating_a_lower_one_or_type_ac() -> None:
    """By its kind: six in ten higher, three type AC, one lower."""
    kinds = {0.3: (100.0, "A"), 0.7: (30.0, "AC"), 0.95: (10.0, "A")}
    for kind, (rated, type_) in kinds.items():
        unit = under_cause("wrong-device", KNOWN, MIDDLE._replace(kind=kind, side=0.9)).unit

        assert (unit.rated, unit.type) == (rated, type_)


def test_a_borrowed_neutral_leaves_the_device_closed() -> None:
    """What it adds stays below the own trip current, or nobody could switch the device on."""
    drawn = under_cause(
        "other-device-first", KNOWN, MIDDLE._replace(kind=0.9, size=0.999, own=-2.0)
    )

    assert 0.0 < drawn.surroundings.borrowed <= 0.9 * drawn.unit.own


def test_an_unknown_start_waits_half_as_long_on_average() -> None:
    """From no time up to the whole wait, by the start that was hit."""
    unit = replace(in_good_order(KNOWN, MIDDLE).unit, waits=-8.0)
    alone = trip(replace(unit, waits=0.0), 5.0, TIME, disturbed=False).mean

    waited = {
        start: trip(unit, 5.0, replace(TIME, start=start), disturbed=False).mean - alone
        for start in ("", "0", "180")
    }
    assert waited == {
        "": pytest.approx(4.0),
        "0": pytest.approx(0.0),
        "180": pytest.approx(8.0),
    }


@pytest.mark.parametrize("over_own", [0.5, 2.0, 6.0])
def test_a_core_harmed_more_is_shifted_more(over_own: float) -> None:
    """From the one harmed least to the one harmed most, without a jump in the middle."""
    shifts = [dc_shift("A", 30.0, over_own, one) for one in (0.0, 0.25, 0.499, 0.501, 0.75, 1.0)]

    assert shifts == sorted(shifts)
    assert shifts[3] - shifts[2] < 0.02 * shifts[2]


def test_a_type_that_is_dead_on_one_side_still_ramps_on_ac() -> None:
    """A slow rise has both half cycles; an unknown start hits the dead one every other time."""
    dead = under_cause("fails-on-one-start", KNOWN, MIDDLE._replace(kind=0.9, size=0.1, side=0.8))

    assert dead.unit.weak_side == "180"
    assert predict(dead, replace(TIME, start="0")).shows > 0.99
    assert predict(dead, replace(TIME, start="180")).shows == 0.0
    assert predict(dead, TIME).shows == pytest.approx(0.5, abs=0.01)
    assert predict(dead, Attempt("ramp", 30.0, 33.0, current_uncertainty=1.5)).shows > 0.99


def test_a_charged_link_has_lost_one_valve_drop_or_two() -> None:
    """To earth through one valve of 0.7 V, between two lines or poles through two."""
    crest = 230.0 * 2.0**0.5
    setting = Setting(smoothing=100.0)

    assert setting.charged_link_of(CIRCUITS["half-wave-smoothed"]) == pytest.approx(crest - 0.7)
    assert setting.charged_link_of(CIRCUITS["bridge"]) == pytest.approx(crest - 1.4)
