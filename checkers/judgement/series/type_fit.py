"""Is a device built for the faults of a load that it protects?"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from checkers.domain.devices import Form
from checkers.domain.verdicts import Outcome
from checkers.judgement.equipment import NO_DC, SILENT, Equipment
from checkers.judgement.equipment_fit import CONTRADICTED
from checkers.judgement.series.arrangement import Arrangement, DCProtection, PlacedLoad
from checkers.judgement.series.dc_sources import asks_for_detection
from checkers.judgement.type_order import covers

DETECTION_ELSEWHERE = (
    "6 mA detection is made for charge points: whether it serves here, the maker of the "
    "equipment must state."
)


class Fit(NamedTuple):
    """How a device's type suits a load, and why not."""

    outcome: Outcome
    why: str = ""


GOOD = Fit(Outcome.PASS)


def protected_by(arrangement: Arrangement, place: int) -> tuple[int, ...]:
    """Return the loads for which a device is the nearest that protects by itself."""
    shape, devices = arrangement.shape, arrangement.devices
    helpers = [child for child in shape.children[place] if not devices[child].is_rcd]
    found = [*shape.loads[place], *(one for h in helpers for one in protected_by(arrangement, h))]
    return tuple(dict.fromkeys(found))


def type_fit(arrangement: Arrangement, place: int, number: int) -> Fit:
    """Return how the type of a device suits a load it protects."""
    load = arrangement.loads[number]
    detected = load.protection == DCProtection.RDC_DD or _detected_above(arrangement, number)
    return _fit_of(arrangement.devices[place].device.type, load, detected=detected)


@lru_cache(maxsize=1024)
def _fit_of(kind: str, load: PlacedLoad, *, detected: bool) -> Fit:
    if load.protection == DCProtection.TYPE_B:
        return GOOD
    equipment = load.equipment
    if load.declared is not None and equipment.maker_says == SILENT:
        # A promise that no more can flow stands whatever keeps it.
        equipment = replace(equipment, maker_says=NO_DC, detection=None)
    if detected and not asks_for_detection(load):
        fits = covers(kind, equipment.least_type)
        return GOOD if fits else Fit(Outcome.CANNOT_SAY, DETECTION_ELSEWHERE)
    return _fit(kind, replace(equipment, detection=True) if detected else equipment)


def _fit(kind: str, equipment: Equipment) -> Fit:
    """Return how a device type suits equipment: by its circuit, its maker and its conditions."""
    if covers(kind, equipment.least_type):
        return GOOD
    if equipment.contradicted:
        return Fit(Outcome.CANNOT_SAY, CONTRADICTED)
    serving = [also for also in equipment.need.also if kind in also.types]
    unknown = [also.where for also in serving if equipment.meets(also) is None]
    calls = f"it calls for type {equipment.least_type}"
    if equipment.maker_type and not covers(kind, equipment.maker_type):
        return Fit(Outcome.FAIL, f"its maker calls for type {equipment.maker_type}")
    if unknown:
        return Fit(Outcome.CANNOT_SAY, f"{calls}, unless {', or '.join(unknown)}")
    where = ", or ".join(also.where for also in serving)
    return Fit(Outcome.FAIL, f"{calls}, unless {where}" if where else calls)


def _detected_above(arrangement: Arrangement, number: int) -> bool:
    """Tell whether 6 mA detection stands in the tree anywhere above a load."""
    devices = arrangement.devices
    if all(one.device.form != Form.RDC_DD for one in devices):
        return False
    parents = arrangement.loads[number].parents
    above = [*parents, *arrangement.above(parents)]
    return any(devices[place].device.form == Form.RDC_DD for place in above)
