"""Is a device built for the faults of a load that it protects? Asked of each load in its place."""

from __future__ import annotations

from dataclasses import replace

from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.equipment.type_fit import Fit, Why, fit_of
from checkers.judgement.equipment.type_rules import other_means
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.wording.book import part


def protected_by(arrangement: Arrangement, place: int) -> tuple[int, ...]:
    """Return the loads for which a device is the nearest that protects by itself."""
    shape, devices = arrangement.shape, arrangement.devices
    helpers = [child for child in shape.children[place] if not devices[child].is_rcd]
    found = [*shape.loads[place], *(one for h in helpers for one in protected_by(arrangement, h))]
    return tuple(dict.fromkeys(found))


def type_fit(arrangement: Arrangement, place: int, number: int) -> Fit | None:
    """Return how the type of a device suits a load it protects.

    None where the load has a type B of its own: that one is to suit it, and what it lets pass
    counts as for any type B below. None too where the code protects it by other means.
    """
    load, code = arrangement.loads[number], arrangement.code
    own = load.protection == DCProtection.TYPE_B
    if own or other_means(code, load.equipment, arrangement.day):
        return None
    kind = arrangement.devices[place].device.type
    return fit_of(kind, equipment_in_place(arrangement, number))


def equipment_in_place(arrangement: Arrangement, number: int) -> Equipment:
    """Return the equipment of a load, with the 6 mA detection that guards it in the tree."""
    equipment = arrangement.loads[number].equipment
    guarded = equipment.detection or _guarded(arrangement, number)
    return replace(equipment, detection=True) if guarded else equipment


def fit_words(fit: Fit, equipment: Equipment) -> str:
    """Return why a type does not suit equipment, as the end of a sentence without its stop."""
    if fit.why is Why.CONTRADICTED:
        return part("equipment.maker-contradicts-circuit")
    if fit.why is Why.DETECTION_ELSEWHERE:
        return part("equipment.dc-detection-elsewhere")
    if fit.why is Why.MAKER_ASKS_MORE:
        return part("series.maker-calls-for", type=equipment.maker_type)
    where = part("series.or").join(also.where for also in fit.conditions)
    code = "series.calls-for-unless" if where else "series.calls-for"
    return part(code, type=equipment.least_type, conditions=where)


def _guarded(arrangement: Arrangement, number: int) -> bool:
    """Tell whether 6 mA detection stands on every path from the supply to a load."""
    if not any(one.device.detects_dc for one in arrangement.devices):
        return False
    return all(_detected(arrangement, place) for place in arrangement.loads[number].parents)


def _detected(arrangement: Arrangement, place: int) -> bool:
    device = arrangement.devices[place]
    if device.device.detects_dc:
        return True
    above = device.parents
    return bool(above) and all(_detected(arrangement, parent) for parent in above)
