"""How much smooth DC the loads of an arrangement can leave on the devices above, unseen."""

from __future__ import annotations

from datetime import date
from functools import lru_cache
from math import inf
from typing import NamedTuple

from checkers.domain.codes.registry import Code
from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.equipment.own_interrupter import interrupter_on_dc
from checkers.judgement.equipment.type_order import covers
from checkers.judgement.series.arrangement import DCProtection, PlacedLoad
from checkers.judgement.series.dc.limits import built_in_type_b, detection

SMOOTH_FROM = "B"
COMPOSITE = "F"


class Bounds(NamedTuple):
    """Smooth DC [mA] at most: `low` if all that is not known turns out well, `high` if not."""

    low: float
    high: float

    def up_to(self, limit: Bounds | float) -> Bounds:
        """Return the bounds where no more than a limit, or the limits of both, can flow."""
        low, high = limit if isinstance(limit, Bounds) else (limit, limit)
        return Bounds(min(self.low, low), min(self.high, high))

    def plus(self, other: Bounds) -> Bounds:
        """Return the bounds of two flows together."""
        return Bounds(self.low + other.low, self.high + other.high)


NOTHING = Bounds(0.0, 0.0)


@lru_cache(maxsize=1024)
def can_give_smooth_dc(load: PlacedLoad) -> bool:
    """Tell whether what a load leaves adds up with the rest, and decides.

    It does where a fault in its circuit can be smooth DC, where 6 mA detection or a type B
    guards it, and where its maker declares some. What ordinary electronics on line and neutral
    leave is bounded for each piece by its product standard, and is a remark.
    """
    equipment = load.equipment
    guarded = load.protection != DCProtection.NONE or equipment.load.detects
    calls = (equipment.need.type, equipment.maker_type)
    smooth = any(covers(one, SMOOTH_FROM) for one in calls)
    return guarded or smooth or load.declared is not None


def calls_for_type_f(load: PlacedLoad) -> bool:
    """Tell whether its circuit or its maker calls for a type F, and no figure is declared."""
    called = load.equipment.least_type == COMPOSITE
    return called and load.declared is None and not can_give_smooth_dc(load)


@lru_cache(maxsize=1024)
def left_by(load: PlacedLoad, code: Code, day: date) -> Bounds:
    """Return the smooth DC [mA] that all pieces of a load together can leave unseen."""
    each = _of_each(load, code, day)
    count = load.count if can_give_smooth_dc(load) else 1
    return Bounds(each.low * count, each.high * count) if each.high else each


def _of_each(load: PlacedLoad, code: Code, day: date) -> Bounds:
    if load.protection == DCProtection.TYPE_B:
        own = built_in_type_b(code, day)
        return Bounds(own, own)
    return left_unseen(load.equipment, code, day)


@lru_cache(maxsize=1024)
def left_unseen(equipment: Equipment, code: Code, day: date) -> Bounds:
    """Return the smooth DC [mA] that one piece can leave on its device unseen.

    Detection that opens its supply keeps a charge point to 6 mA; elsewhere it may keep that,
    and need not: its standard is not made for it. Where a code gives equipment an interrupter
    of its own, that one bounds it.
    """
    bounds = _undetected(equipment)
    interrupter = interrupter_on_dc(equipment, code, day)
    if interrupter is not None:
        bounds = bounds.up_to(interrupter[0])
    if not equipment.detection:
        return bounds
    sensed = bounds.up_to(detection(code, day))
    return sensed if equipment.asks_for_detection else Bounds(sensed.low, bounds.high)


def _undetected(equipment: Equipment) -> Bounds:
    """Return what one piece can leave where no detection opens its supply.

    A declared figure counts in place of what its kind may leave, where no smooth DC is to be
    feared in a fault: elsewhere it may raise the figure, and never lowers it. What flows in
    normal use says nothing of a fault on the link, nor of the vehicle on a charge point.
    """
    if covers(equipment.maker_type, SMOOTH_FROM):
        return Bounds(inf, inf)
    most, declared = equipment.smooth_dc, equipment.declared
    low = equipment.need.smooth_dc_met if equipment.undecided else most
    if declared is None:
        return Bounds(min(low, most), most)
    if not _feared(equipment):
        return Bounds(declared, declared)
    return Bounds(max(low, declared), max(most, declared))


def _feared(equipment: Equipment) -> bool:
    """Tell whether a fault may leave more than normal use does."""
    settled = not covers(equipment.least_type, SMOOTH_FROM)
    return not settled or equipment.asks_for_detection
