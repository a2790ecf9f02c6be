"""The material: saturation, coercive field and the time it takes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.physics.core.magnetic_material import (
    Material,
    next_flux,
    opposing_field,
    saturating_flux,
)

FIELDS = st.floats(-1e3, 1e3)
FLUXES = st.floats(-0.999, 0.999)
DRAGS = st.floats(1e-3, 1e3)
MATERIAL = Material(knee=0.2, coercive=0.3)


def test_half_the_flux_stands_at_the_knee() -> None:
    """The knee is the field of half saturation."""
    assert saturating_flux(0.2, 0.2) == pytest.approx(0.5)


def test_much_field_saturates_in_either_direction() -> None:
    """A thousand knees of field leave a thousandth to full saturation."""
    assert saturating_flux(200.0, 0.2) == pytest.approx(0.999, abs=1e-5)
    assert saturating_flux(-200.0, 0.2) == pytest.approx(-0.999, abs=1e-5)


@given(FLUXES)
def test_field_and_flux_are_each_other_s_inverse(flux: float) -> None:
    """The field a flux calls for gives back that flux."""
    assert saturating_flux(opposing_field(flux, 0.2), 0.2) == pytest.approx(flux, abs=1e-9)


@given(FLUXES, st.floats(-0.99, 0.99), DRAGS)
def test_flux_stays_while_the_field_is_within_the_coercive_field(
    flux: float, share: float, drag: float
) -> None:
    """Less than the coercive field beside balance moves nothing: that is hysteresis."""
    field = opposing_field(flux, 0.2) + share * 0.3

    assert next_flux(flux, field, drag, MATERIAL) == flux


@given(FLUXES, FIELDS, DRAGS)
def test_a_step_fulfils_the_equation_at_its_end(flux: float, field: float, drag: float) -> None:
    """Where flux moves, field = opposing field ± coercive field + drag × change."""
    after = next_flux(flux, field, drag, MATERIAL)

    if after != flux:
        coercive = 0.3 if after > flux else -0.3
        balance = opposing_field(after, 0.2) + coercive + drag * (after - flux)
        assert balance == pytest.approx(field, rel=1e-6, abs=1e-6)


@given(FLUXES, FIELDS, DRAGS)
def test_no_step_passes_the_flux_that_the_field_holds_at_rest(
    flux: float, field: float, drag: float
) -> None:
    """However short of time or far from balance, the flux does not overshoot."""
    after = next_flux(flux, field, drag, MATERIAL)
    ends = (saturating_flux(field - 0.3, 0.2), saturating_flux(field + 0.3, 0.2), flux)

    assert min(ends) - 1e-9 <= after <= max(ends) + 1e-9
