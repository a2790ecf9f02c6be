"""What the local code says of each device's type, for the equipment it is the nearest to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from functools import lru_cache

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import DeviceType
from checkers.domain.verdicts import Finding, Outcome
from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.equipment.type_rules import concerning, judge_by_code
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.device_type.type_fit import equipment_in_place, protected_by
from checkers.wording.book import part


def code_findings(arrangement: Arrangement, mend: str) -> list[Finding]:
    """Return a finding for each rule of the code on types that a device does not meet.

    One that names no equipment is told once for a device. Inputs: mend, the least change.
    """
    found: dict[tuple[str, str, str], Finding] = {}
    for place, device in enumerate(arrangement.devices):
        for number, one in by_code(arrangement, place):
            told = replace(
                one,
                about=part(
                    "series.type-by-code", device=device.id, load=arrangement.loads[number].name
                ),
                device=device.id,
                field=f"devices[{place}].type",
                do_next=mend if one.outcome is Outcome.FAIL else one.do_next,
            )
            found.setdefault((device.id, one.says, one.outcome), told)
    return list(found.values())


def by_code(arrangement: Arrangement, place: int) -> Iterator[tuple[int, Finding]]:
    """Yield (load, finding) for what the code says against the type of one device."""
    device = arrangement.devices[place]
    if not device.is_rcd or device.device.type == DeviceType.UNKNOWN:
        return
    code, day = arrangement.code, device.fitted_on or arrangement.day
    upstream = _senses_upstream(arrangement, place)
    for number in protected_by(arrangement, place):
        if arrangement.loads[number].protection != DCProtection.TYPE_B:
            equipment = equipment_in_place(arrangement, number)
            found = _against(device.device.type, equipment, code, day, upstream)
            yield from ((number, one) for one in found)


@lru_cache(maxsize=2048)
def _against(
    kind: str, equipment: Equipment, code: Code, day: date, upstream: bool | None
) -> tuple[Finding, ...]:
    rules = concerning(code.type_rules_on(day), equipment)
    judged = judge_by_code(rules, equipment, kind, upstream=upstream)
    return tuple(one for one in judged if one.outcome is not Outcome.PASS)


def _senses_upstream(arrangement: Arrangement, place: int) -> bool | None:
    """Tell whether every RCD above a device senses smooth DC; None where a type is not known."""
    above = [arrangement.devices[one] for one in arrangement.above([place])]
    types = [one.device for one in above if one.is_rcd]
    if all(one.senses_smooth_dc for one in types):
        return True
    known = [one for one in types if one.type != DeviceType.UNKNOWN]
    return False if any(not one.senses_smooth_dc for one in known) else None
