"""What each cause in the circuit changes in a possible state of affairs."""

from __future__ import annotations

from dataclasses import replace
from math import exp, inf, log

from checkers.physics.condition.dc_shift import blinding_dc, dc_shift
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import Lots
from checkers.physics.condition.ratings import next_below
from checkers.physics.condition.sound_device import NEAR_QUADRATURE, sound_unit
from checkers.physics.condition.state import Possible, Surroundings, Unit
from checkers.physics.scatter import SCATTER

SAME_RATING, LOWER_RATING = 0.5, 0.35  # of other devices in series; the rest is a shared neutral
HARDLY_EARTHED = 0.1


def leakage_adds(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the circuit with standing leakage that helps the test current."""
    cosine = NEAR_QUADRATURE + (1.0 - NEAR_QUADRATURE) * lots.phase
    return _with(possible, leakage=_leakage(possible, known, lots), leakage_cosine=cosine)


def leakage_opposes(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the circuit with standing leakage that works against the test current."""
    cosine = -NEAR_QUADRATURE - (1.0 - NEAR_QUADRATURE) * lots.phase
    return _with(possible, leakage=_leakage(possible, known, lots), leakage_cosine=cosine)


def load_disturbs(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the circuit with a connected load that holds back and scatters the trips."""
    del known, lots
    return _with(possible, disturbs=True)


def neutral_earth_path(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the circuit with a path from neutral to earth below the device."""
    shares = SCATTER.shunted_share_tt if known.system == "tt" else SCATTER.shunted_share_tn
    part = SCATTER.board_share.between(lots.side)
    return _with(possible, shunted=shares.between(lots.size**2), board_part=part)


def no_return_path(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the supply without a bond from neutral to earth: hardly any test current flows."""
    del known
    return _with(possible, earthed=HARDLY_EARTHED * lots.size)


def other_device_first(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the circuit with another device in the path, or with a neutral shared with one."""
    if lots.kind >= SAME_RATING + LOWER_RATING:
        borrowed = known.rated * SCATTER.borrowed_current_share.between(lots.size)
        return _with(possible, borrowed=min(borrowed, 0.9 * possible.unit.own))
    rated = known.rated if lots.kind < SAME_RATING else next_below(known.rated, lots.size)
    return replace(possible, other=_another(rated, known, lots))


def blinded_by_dc(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the circuit with smooth DC that raises the trip current by a quarter or more.

    Assumption: where the DC that was measured does not do that to this core, more flows
    while the device is tested.
    """
    del known
    if is_blinded(possible):
        return possible
    unit, reach = possible.unit, SCATTER.blinding_range
    least = blinding_dc(unit.type, unit.rated)
    if least == inf:
        return possible
    over_own = least * exp(lots.size * log(reach.most / reach.typical))
    return _with_dc(possible, over_own, lots)


def type_too_low(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the circuit with loads whose DC the type is not made for, too little to show.

    Assumption: where the DC that was measured would show, it does not flow in the test.
    """
    if is_blinded(possible):
        return _with(possible, dc_shift=1.0)
    if known.dc is not None:
        return possible
    least = blinding_dc(possible.unit.type, possible.unit.rated)
    return possible if least == inf else _with_dc(possible, least * lots.size, lots)


def is_blinded(possible: Possible) -> bool:
    """Tell whether the DC of the loads raises the trip current enough to count as blinding."""
    return possible.surroundings.dc_shift >= SCATTER.blinding_shift.typical


def _with_dc(possible: Possible, over_own: float, lots: Lots) -> Possible:
    unit = possible.unit
    shift = dc_shift(unit.type, unit.rated, over_own, lots.core)
    return _with(possible, dc=over_own * unit.own, dc_shift=shift)


def _leakage(possible: Possible, known: Known, lots: Lots) -> float:
    """Return the leakage [mA]: the one measured, or one that matters and lets the device close."""
    if known.leakage is not None:
        return possible.surroundings.leakage
    share = SCATTER.large_leakage_share.between(lots.size)
    return min(share * known.rated, 0.95 * possible.unit.own)


def _another(rated: float, known: Known, lots: Lots) -> Unit:
    """Return another general device of a rating [mA], drawn apart from the first."""
    apart = lots._replace(
        own=lots.other_own, opening=lots.other_opening, lag=lots.other_lag, waits=lots.side
    )
    return sound_unit(Known(rated=rated, type=known.type), apart)


def _with(possible: Possible, **changes: float) -> Possible:
    around: Surroundings = replace(possible.surroundings, **changes)  # type: ignore[arg-type]
    return replace(possible, surroundings=around)
