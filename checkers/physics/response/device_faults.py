"""What each fault of a device changes in a possible state of affairs."""

from __future__ import annotations

from dataclasses import replace
from math import inf, log

from checkers.domain.devices import DeviceType
from checkers.physics.response.figures import FIGURES
from checkers.physics.response.in_good_order import half_wave_ratio, sound_unit
from checkers.physics.response.known import Known
from checkers.physics.response.lots import Lots
from checkers.physics.response.possible import Possible, Unit
from checkers.physics.response.ratings import next_above, next_below

HIGHER, LOWER = 0.6, 0.1  # of wrong devices; the rest are type AC in place of another
UNDELAYED = 0.5  # of wrong devices where a delayed one was noted


def trips_too_high(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with its own trip current drifted above its rating."""
    drift = FIGURES.trips_too_high
    share = min(drift.most, drift.typical - drift.spread * log(1.0 - lots.size))
    return _with(possible, replace(possible.unit, own=known.rated * share))


def trips_too_low(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with its own trip current drifted below half its rating."""
    share = FIGURES.trips_too_low.between(lots.size)
    return _with(possible, replace(possible.unit, own=known.rated * share))


def slow_mechanism(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with a mechanism that sticks, at its first operation or at all."""
    del known
    extra = FIGURES.sticking_time.at(lots.extra)
    stuck = lots.kind < FIGURES.stuck_share.typical
    again = lots.side < FIGURES.sticks_again_share.typical
    later = extra * lots.size if again else 0.0
    unit = replace(possible.unit, first_extra=inf if stuck else extra, later_extra=later)
    return _with(possible, unit)


def does_not_open(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with a mechanism seized, or contacts welded."""
    del known, lots
    return _with(possible, replace(possible.unit, first_extra=inf, later_extra=inf))


def button_failed(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return the device with a dead test circuit, sound otherwise."""
    del known, lots
    return _with(possible, replace(possible.unit, button_works=False))


def wrong_device(possible: Possible, known: Known, lots: Lots) -> Possible:
    """Return another device in its place: another rating, type AC, or one without the delay."""
    if known.delay in ("S", "set") and lots.side < UNDELAYED:
        return _with(possible, sound_unit(replace(known, delay="none", set_delay=None), lots))
    lower = lots.kind >= 1.0 - LOWER
    if known.type != DeviceType.AC and HIGHER <= lots.kind < 1.0 - LOWER:
        return _with(possible, _of_type_ac(possible.unit, lots))
    rated = (next_below if lower else next_above)(known.rated, lots.size)
    return _with(possible, _of_rating(possible.unit, rated))


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
