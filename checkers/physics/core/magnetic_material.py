"""A core material that saturates, holds back by its coercive field, and takes time to follow.

Field and flux are without unit: flux 1 is full saturation, and the unit of field is chosen by
whoever uses the material (see sensing_core).

    field = opposing_field(flux) ± coercive + drag · d(flux)/d(angle)

References:
    [1] A. E. Kennelly, "Magnetic reluctance", AIEE Transactions, vol. 8, 1891: the relation of
        field and flux taken for saturation, written there as a straight line of reluctivity
        (from memory).
    [2] Dry friction as the cause of hysteresis, for the coercive term: "Magnetic vector
        hysteresis model with dry friction-like pinning", Physica B, vol. 233, 1997 (from memory).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt


@dataclass(frozen=True, slots=True)
class Material:
    """A material: the field at half saturation, and the coercive field [same unit of field]."""

    knee: float
    coercive: float


def saturating_flux(field: float, knee: float) -> float:
    """Return the flux [of saturation] that a field holds, without hysteresis.

    Inputs: the field, and the field at half saturation [same unit].
    Assumes the relation of [1]: steep at first, saturating as 1 - knee / field.
    """
    return field / (knee + abs(field))


def opposing_field(flux: float, knee: float) -> float:
    """Return the field that a flux [of saturation] calls for: the inverse of saturating_flux."""
    return knee * flux / (1.0 - abs(flux))


def next_flux(flux: float, field: float, drag: float, material: Material) -> float:
    """Return the flux after one step of time, by the implicit (backward) Euler rule.

    Inputs: the flux before [of saturation]; the field applied at the step; the drag over the
    step's length, which is the field per change of flux. Both in the material's unit of field.
    Result: the flux after. It does not move while the field is within the coercive field of
    balance. The implicit rule leaves a quadratic equation, so no step can overshoot.
    """
    surplus = field - material.knee * flux / (1.0 - abs(flux))
    if surplus > material.coercive:
        pull = field - material.coercive + drag * flux
    elif surplus < -material.coercive:
        pull = field + material.coercive + drag * flux
    else:
        return flux
    size = abs(pull)
    half = drag + material.knee + size
    return 2.0 * pull / (half + sqrt(half * half - 4.0 * drag * size))
