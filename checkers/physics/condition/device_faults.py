"""What each fault of a device changes in a possible state of affairs."""

from __future__ import annotations

from dataclasses import replace
from math import inf, log

from checkers.domain.device.device import DeviceType
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import Lots
from checkers.physics.condition.ratings import next_above, next_below
from checkers.physics.condition.sound_device import half_wave_ratio, sound_unit
from checkers.physics.condition.state import Possible, Unit
from checkers.physics.scatter import SCATTER

HIGHER, LOWER = 0.6, 0.1  # of wrong devices; the rest are type AC in place of another
UNDELAYED = 0.5  # of wrong devices where a delayed one was noted
DELAYED, DELAYED_SMALL = 0.3, 0.05  # of wrong devices where none was; selective ones begin above
SELECTIVE_ABOVE = 30.0  # mA of rating
LEAST_HELD = 40.0  # ms: what sticks less now and then is the scatter of a sound device
HALF_WAVES_LOST = 0.25  # of devices that fail at one start: deaf to half waves of either sign
DEAD = 0.6  # of the others: one side is dead, not only weaker


def trips_too_high(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with its own trip current drifted above its rating."""
    drift = SCATTER.trips_too_high
    share = min(drift.most, drift.typical - drift.spread * log(1.0 - lots.size))
    return _with(possible, replace(possible.unit, own=known.rated * share))


def trips_too_low(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with its own trip current drifted below half its rating."""
    share = SCATTER.trips_too_low.between(lots.size)
    return _with(possible, replace(possible.unit, own=known.rated * share))


def slow_mechanism(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with a mechanism that sticks, at its first operation or at all."""
    del known
    extra = SCATTER.sticking_time.at(lots.extra)
    stuck = lots.kind < SCATTER.stuck_share.typical
    again = lots.side < SCATTER.sticks_again_share.typical
    later = extra * lots.size if again else 0.0
    unit = replace(possible.unit, first_extra=inf if stuck else extra, later_extra=later)
    return _with(possible, unit)


def does_not_open(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with a mechanism seized, or contacts welded."""
    del known, lots
    return _with(possible, replace(possible.unit, first_extra=inf, later_extra=inf))


def erratic_mechanism(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with a mechanism that sticks now and then, each operation by itself."""
    del known
    stuck = lots.kind < SCATTER.stuck_share.typical
    extra = inf if stuck else LEAST_HELD + SCATTER.sticking_time.at(lots.extra)
    sticks = SCATTER.sticks_now_and_then.between(lots.size)
    unit = replace(possible.unit, first_extra=extra, later_extra=extra, sticks=sticks)
    return _with(possible, unit)


def fails_on_one_start(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device that answers to one start or polarity only, or to no half wave."""
    del known
    unit = possible.unit
    if lots.kind < HALF_WAVES_LOST and unit.type != DeviceType.AC:
        return _with(possible, replace(unit, half_wave=inf))
    side = "0" if lots.side < 0.5 else "180"
    factor = inf if lots.size < DEAD else max(1.0, SCATTER.weak_side.at(lots.extra))
    return _with(possible, replace(unit, weak_side=side, weak_factor=factor))


def button_failed(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with a dead test circuit, sound otherwise."""
    del known, lots
    return _with(possible, replace(possible.unit, button_works=False))


def wrong_device(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return another device in its place: of another rating or delay, or of type AC."""
    if known.delay == "none" and lots.side < _delayed_share(known.rated):
        return _with(possible, sound_unit(replace(known, delay="S"), lots))
    if known.delay in ("S", "set") and lots.side < UNDELAYED:
        return _with(possible, sound_unit(replace(known, delay="none", set_delay=None), lots))
    lower = lots.kind >= 1.0 - LOWER
    if known.type != DeviceType.AC and HIGHER <= lots.kind < 1.0 - LOWER:
        return _with(possible, _of_type_ac(possible.unit, lots))
    rated = (next_below if lower else next_above)(known.rated, lots.size)
    return _with(possible, _of_rating(possible.unit, rated))


def _delayed_share(rated: float) -> float:
    return DELAYED if rated > SELECTIVE_ABOVE else DELAYED_SMALL


def _of_type_ac(unit: Unit, lots: Lots) -> Unit:
    as_ac = half_wave_ratio(DeviceType.AC, lots)
    return replace(unit, type=DeviceType.AC, half_wave=as_ac, smooth=inf)


def _of_rating(unit: Unit, rated: float) -> Unit:
    scale = rated / unit.rated
    return replace(
        unit,
        rated=rated,
        own=unit.own * scale,
        smooth=unit.smooth * scale,
        button_current=unit.button_current * scale,
    )


def _with(possible: Possible, unit: Unit) -> Possible:
    return replace(possible, unit=unit)
