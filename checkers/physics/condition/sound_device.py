"""A sound device in an ordinary circuit, tested as noted: one draw of it."""

from __future__ import annotations

from math import inf

from checkers.domain.device.device import SENSES_SMOOTH_DC, DeviceType
from checkers.physics.condition.dc_shift import dc_shift
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import Lots
from checkers.physics.condition.state import Handling, Possible, Surroundings, Unit
from checkers.physics.core.parameters import CORE
from checkers.physics.scatter import SCATTER

NEAR_QUADRATURE = 0.17  # cosine at 10° from a quarter period


def in_good_order(known: Known, lots: Lots) -> Possible:
    """Return a sound device, with the leakage and the DC that were measured.

    Inputs: what is known; one draw. Assumption: ordinary leakage is capacitive, a
    quarter period from the test current, give or take 10°.
    """
    unit = sound_unit(known, lots)
    return Possible(unit, _surroundings(known, lots, unit), _handling(lots))


def sound_unit(known: Known, lots: Lots) -> Unit:
    """Return a sound device of the marked rating, type and delay."""
    kind = _type(known, lots)
    rated = known.rated
    senses_dc = kind in SENSES_SMOOTH_DC
    return Unit(
        rated=rated,
        type=kind,
        own=rated * SCATTER.own_trip_share.at(lots.own),
        half_wave=half_wave_ratio(kind, lots),
        opening=SCATTER.opening_time.at(lots.opening) + _delay(known, lots),
        lag=_lag(known, lots),
        waits=SCATTER.half_period.typical * (2.0 * lots.waits - 1.0),
        button_current=_button_current(rated, lots),
        smooth=rated * SCATTER.smooth_dc_share.at(lots.smooth) if senses_dc else inf,
        smooth_lag=SCATTER.smooth_dc_lag.at(lots.lag),
        delay=known.delay,
    )


def half_wave_ratio(device_type: str, lots: Lots) -> float:
    """Return the trip current on a half wave over that on AC, for a type."""
    if device_type == DeviceType.AC:
        return SCATTER.half_wave_ratio_blind.at(lots.half_wave)
    return SCATTER.half_wave_ratio.at(lots.half_wave)


def _type(known: Known, lots: Lots) -> str:
    if known.type != DeviceType.UNKNOWN:
        return known.type
    is_ac = lots.type < SCATTER.unknown_type_ac_share.typical
    return DeviceType.AC if is_ac else DeviceType.A


def _delay(known: Known, lots: Lots) -> float:
    if known.delay == "G":
        return SCATTER.short_delay.at(lots.delay)
    if known.delay == "S":
        return SCATTER.selective_delay.at(lots.delay)
    return (known.set_delay or 0.0) * SCATTER.set_delay_excess.at(lots.delay)


def _lag(known: Known, lots: Lots) -> float:
    if known.delay == "S":
        return SCATTER.selective_lag.at(lots.lag)
    if lots.hurry < SCATTER.unhurried_share.typical:
        return SCATTER.unhurried_lag.at(lots.lag)
    quick = lots.hurry > 1.0 - SCATTER.quick_share.typical
    return (SCATTER.quick_lag if quick else SCATTER.lag).at(lots.lag)


def _button_current(rated: float, lots: Lots) -> float:
    usual, greatest = CORE.button.of("usual", rated), CORE.button.of("greatest", rated)
    return min(greatest, usual + (greatest - usual) / 2.0 * lots.button)


def _surroundings(known: Known, lots: Lots, unit: Unit) -> Surroundings:
    dc = known.dc or 0.0
    return Surroundings(
        loads_on=known.loads == "on" or (known.loads != "off" and lots.loads < 0.5),
        at_board=lots.board < 0.5,
        leakage=_leakage(known, lots),
        leakage_cosine=NEAR_QUADRATURE * (2.0 * lots.phase - 1.0),
        dc=dc,
        dc_shift=dc_shift(unit.type, unit.rated, dc / unit.own, lots.core),
    )


def _leakage(known: Known, lots: Lots) -> float:
    if known.leakage is not None:
        return known.leakage * max(0.0, 1.0 + SCATTER.leakage_measured.typical * lots.leakage)
    return known.rated * SCATTER.small_leakage_share.typical * abs(lots.leakage)


def _handling(lots: Lots) -> Handling:
    return Handling(excess=SCATTER.test_current_excess.at(lots.excess))
