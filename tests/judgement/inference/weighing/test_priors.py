"""How common causes are, and what measured leakage and DC change."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.domain.causes import CAUSES, REMAINDER
from checkers.judgement.inference.weighing.priors import prior_shares
from checkers.physics.condition.knowledge import Known

A = Known(rated=30.0, type="A")


@given(
    st.sampled_from(["AC", "A", "F", "B", "B+", "unknown"]),
    st.one_of(st.none(), st.floats(0.0, 300.0)),
    st.one_of(st.none(), st.floats(0.0, 30.0)),
    st.booleans(),
)
@settings(deadline=None)
def test_shares_are_a_distribution(
    device_type: str, dc: float | None, leakage: float | None, on: bool
) -> None:
    """Whatever is known, the shares are positive and sum to 1."""
    known = Known(rated=30.0, type=device_type, dc=dc, leakage=leakage)
    shares = prior_shares(known, 6.0, loads_may_be_on=on)

    assert sum(shares.values()) == pytest.approx(1.0)
    assert all(share > 0.0 for share in shares.values())
    assert set(shares) <= set(CAUSES)


def test_most_devices_are_in_good_order() -> None:
    """Without anything known, nothing is wrong in most cases."""
    assert 0.7 < prior_shares(A, 6.0, loads_may_be_on=True)[REMAINDER] < 0.9


def test_dc_above_what_the_type_bears_leaves_nothing_in_good_order() -> None:
    """The device is blinded, or of too low a type."""
    shares = prior_shares(Known(rated=30.0, type="A", dc=60.0), 6.0, loads_may_be_on=True)

    assert REMAINDER not in shares
    assert shares["blinded-by-dc"] + shares.get("type-too-low", 0.0) > 0.8


def test_dc_within_what_the_type_bears_makes_its_causes_rare() -> None:
    """It was measured, and it was little."""
    shares = prior_shares(Known(rated=30.0, type="A", dc=2.0), 6.0, loads_may_be_on=True)

    assert shares["blinded-by-dc"] < 0.002


def test_measured_leakage_counts_only_while_loads_are_on() -> None:
    """7.3 mA on a 30 mA device matters with the loads connected."""
    known = Known(rated=30.0, type="A", leakage=7.3)
    on = prior_shares(known, 6.0, loads_may_be_on=True)
    off = prior_shares(known, 6.0, loads_may_be_on=False)

    assert on["leakage-adds"] > 0.25
    assert off["leakage-adds"] < 0.01


def test_a_source_on_its_own_makes_a_missing_bond_likely() -> None:
    """On an inverter in battery mode the bond is the first thing to think of."""
    own = prior_shares(Known(30.0, "A", supply="own"), 6.0, loads_may_be_on=True)

    assert own["no-return-path"] > 10 * CAUSES["no-return-path"].prior_for("A")


def test_type_b_is_never_blinded_by_smooth_dc() -> None:
    """It trips on it."""
    shares = prior_shares(Known(rated=30.0, type="B"), 12.0, loads_may_be_on=True)

    assert "blinded-by-dc" not in shares
