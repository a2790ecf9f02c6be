"""What inspection settles moves shares among the causes, and loses none."""

from __future__ import annotations

from random import Random

import pytest

from checkers.judgement.inference.weighing.inspection import Inspected, settled
from checkers.physics.condition.random_draws import random_lots

LOTS = random_lots(Random(1))  # noqa: S311  # a draw of a model, nothing secret
CAUSES = frozenset({"in-good-order", "type-too-low", "leakage-adds", "trips-too-high"})
SHARES = {
    "in-good-order": 0.6,
    "reading-wrong": 0.1,
    "type-too-low": 0.1,
    "leakage-adds": 0.1,
    "trips-too-high": 0.05,
    "button-failed": 0.05,
}


def test_a_type_that_does_not_fit_takes_the_place_of_good_order() -> None:
    """What would be sound is of too low a type."""
    found = settled(SHARES, Inspected(CAUSES, type_fits=False, leaks_too_much=False, lots=LOTS))

    assert not {"in-good-order", "reading-wrong"} & set(found)
    assert found["type-too-low"] == pytest.approx(0.8 / 0.95)


def test_a_type_that_fits_is_not_too_low() -> None:
    """Nor are causes left that are not met at all."""
    found = settled(SHARES, Inspected(CAUSES, type_fits=True, leaks_too_much=False, lots=LOTS))

    assert set(found) == {"in-good-order", "reading-wrong", "leakage-adds", "trips-too-high"}
    assert sum(found.values()) == pytest.approx(1.0)


def test_too_much_leakage_is_not_in_good_order() -> None:
    """All that was sound goes to the leakage that may be met."""
    found = settled(SHARES, Inspected(CAUSES, type_fits=True, leaks_too_much=True, lots=LOTS))

    assert found == pytest.approx({"leakage-adds": 0.8 / 0.85, "trips-too-high": 0.05 / 0.85})


def test_where_the_times_fail_a_misfit_is_no_good_order_either() -> None:
    """The cause with good times is then out already, and good order does not come back."""
    without = {code: share for code, share in SHARES.items() if code != "type-too-low"}
    found = settled(without, Inspected(CAUSES, type_fits=False, leaks_too_much=False, lots=LOTS))

    assert set(found) == {"leakage-adds", "trips-too-high"}
