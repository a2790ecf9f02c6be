"""How much smooth DC the loads of an arrangement can leave on the devices above, unseen."""

from __future__ import annotations

from datetime import date
from functools import lru_cache
from math import inf
from typing import NamedTuple

from checkers.domain.codes import Code
from checkers.domain.load_kinds import MetBy
from checkers.judgement.equipment import Equipment
from checkers.judgement.series.arrangement import DCProtection, PlacedLoad
from checkers.judgement.series.dc_limits import built_in_type_b, detection
from checkers.judgement.type_order import covers

SMOOTH_FROM = "B"


class Bounds(NamedTuple):
    """Smooth DC [mA] at most: `low` if all that is not known turns out well, `high` if not."""

    low: float
    high: float

    def up_to(self, limit: float) -> Bounds:
        """Return the bounds where no more than a limit can flow."""
        return Bounds(min(self.low, limit), min(self.high, limit))


@lru_cache(maxsize=1024)
def can_give_smooth_dc(load: PlacedLoad) -> bool:
    """Tell whether a fault in its circuit can be smooth DC, or its maker declares some.

    What ordinary electronics on line and neutral leave is bounded for each piece by its
    product standard, and is not added up.
    """
    calls = (load.equipment.need.type, load.equipment.maker_type)
    return load.declared is not None or any(covers(one, SMOOTH_FROM) for one in calls)


@lru_cache(maxsize=1024)
def left_by(load: PlacedLoad, code: Code, day: date) -> Bounds:
    """Return the smooth DC [mA] that all pieces of a load together can leave unseen."""
    each = _of_each(load, code, day)
    count = load.count if can_give_smooth_dc(load) else 1
    return Bounds(each.low * count, each.high * count) if each.high else each


def _of_each(load: PlacedLoad, code: Code, day: date) -> Bounds:
    if load.declared is not None:
        return Bounds(load.declared, load.declared)
    bounds = _of_circuit(load.equipment)
    if load.protection == DCProtection.RDC_DD:
        return bounds.up_to(detection(code, day))
    if load.protection == DCProtection.TYPE_B:
        return bounds.up_to(built_in_type_b(code, day))
    return bounds


def _of_circuit(equipment: Equipment) -> Bounds:
    need = equipment.need
    if covers(equipment.maker_type, SMOOTH_FROM) and not equipment.met:
        return Bounds(inf, inf)
    if any(equipment.meets(also) is None for also in need.also):
        return Bounds(need.smooth_dc_met, equipment.smooth_dc)
    return Bounds(equipment.smooth_dc, equipment.smooth_dc)


def asks_for_detection(load: PlacedLoad) -> bool:
    """Tell whether 6 mA detection is one of the ways in which a narrower type serves it."""
    return any(also.when == MetBy.DETECTION for also in load.equipment.need.also)
