"""The greatest smooth DC that can flow through each device of an arrangement unseen."""

from __future__ import annotations

from dataclasses import replace
from math import inf

from checkers.domain.device.device import DeviceType
from checkers.judgement.equipment.dc_by_statement import promised_by
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.dc.ceilings import limit_from_above
from checkers.judgement.series.dc.limits import limits_of
from checkers.judgement.series.dc.sources import (
    NOTHING,
    Bounds,
    calls_for_type_f,
    can_give_smooth_dc,
    left_by,
)
from checkers.judgement.series.dc.through import ANYTHING, Source, Through, total


def flow_through(arrangement: Arrangement) -> list[Through]:
    """Return what can flow through each device, by its place.

    Assumptions: what several sources leave adds up. A device that senses smooth DC lets no
    more pass than the current at which it opens at the latest; every other lets all pass. It
    senses the sum, so that sources of opposite sign hide each other: below it, a branch is
    kept to that current and what the others can leave. Of paths in parallel, each may carry
    all or a part, and together they carry no more than each lets pass. A type B counts with
    all it lets pass, and a type F that equipment calls for with what it bears, whatever they
    feed.

    Source: [1] IEC 60364-5-53:2019, 531.3.3.
    """
    passing: list[Through] = [Through()] * len(arrangement.devices)
    through = list(passing)
    for place in arrangement.shape.bottom_up:
        through[place] = _gathered(arrangement, place, passing)
        passing[place] = _passed_on(arrangement, place, through[place])
    limit_from_above(arrangement, through, passing)
    return through


def _gathered(arrangement: Arrangement, place: int, passing: list[Through]) -> Through:
    found = Through()
    for number in arrangement.shape.loads[place]:
        load = arrangement.loads[number]
        bounds = left_by(load, arrangement.code, arrangement.day)
        if not can_give_smooth_dc(load):
            found.ordinary = max(found.ordinary, bounds.high)
        elif bounds != NOTHING:
            found.parts["load", number] = bounds
        found.type_b_below |= load.protection == DCProtection.TYPE_B
    found.given = dict(found.parts)
    for child in arrangement.shape.children[place]:
        below = passing[child]
        found.parts.update(below.parts)
        found.given.update(below.given)
        found.ordinary = max(found.ordinary, below.ordinary)
        found.type_b_below |= below.type_b_below
    if not arrangement.shape.feeds[place] and limits_of(arrangement, place).senses:
        found.parts["device", place] = found.given["device", place] = ANYTHING
    return found


def _passed_on(arrangement: Arrangement, place: int, through: Through) -> Through:
    """Return what a device lets pass to those above it."""
    limits, device = limits_of(arrangement, place), arrangement.devices[place]
    own: Source = ("device", place)
    if limits.senses:
        opens_at = inf if limits.opens_at is None else limits.opens_at
        if device.is_rcd:
            whole = {own: Bounds(opens_at, opens_at)}
            return Through(parts=whole, given=dict(whole), type_b_below=True)
        ordinary = Bounds(through.ordinary, through.ordinary)
        sensed = total(through.parts.values()).plus(ordinary).up_to(opens_at)
        return Through(
            parts={own: sensed} if sensed.high else {},
            given={**through.given, own: ordinary} if through.ordinary else dict(through.given),
            type_b_below=through.type_b_below,
        )
    if _borne_by_type_f(arrangement, place):
        borne, _ = promised_by(DeviceType.F)
        more = {own: Bounds(borne, borne)}
        return replace(through, parts=through.parts | more, given=through.given | more)
    return through


def _borne_by_type_f(arrangement: Arrangement, place: int) -> bool:
    """Tell whether a device is a type F with equipment of its own that calls for one."""
    device = arrangement.devices[place]
    if device.device.type != DeviceType.F or not device.is_rcd:
        return False
    return any(calls_for_type_f(arrangement.loads[one]) for one in _own_loads(arrangement, place))


def _own_loads(arrangement: Arrangement, place: int) -> list[int]:
    """Return the loads on a device, with nothing but monitors between."""
    shape, devices = arrangement.shape, arrangement.devices
    monitors = [one for one in shape.children[place] if not devices[one].device.opens]
    below = [number for one in monitors for number in _own_loads(arrangement, one)]
    return [*shape.loads[place], *below]
