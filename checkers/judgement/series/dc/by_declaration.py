"""The smooth DC that the maker of equipment declares, against what a device bears."""

from __future__ import annotations

from datetime import date
from math import isinf

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device, DeviceType
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import citations
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, Judges, MeasuredAs
from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.series.dc.fitness import compare_dc
from checkers.judgement.series.dc.limits import DCLimits, dc_limits
from checkers.judgement.series.dc.sources import Bounds, left_unseen

ABOUT = "smooth DC that its maker declares"
FAULT_LOOP = "limited only by the fault loop"


def judge_declared(equipment: Equipment, device: Device, code: Code, day: date) -> list[Finding]:
    """Return the finding on the smooth DC a piece of equipment can leave, where some is declared.

    A device that senses smooth DC opens by itself, and one whose type is not known is not
    judged here.
    """
    known = device.type != DeviceType.UNKNOWN and device.protects
    limits = dc_limits(device, code, day)
    if equipment.declared is None or not known or limits.senses or limits.bears is None:
        return []
    return [_finding(left_unseen(equipment, code, day), device, limits)]


def _finding(left: Bounds, device: Device, limits: DCLimits) -> Finding:
    bears = limits.bears or 0.0
    most = FAULT_LOOP if isinf(left.high) else f"up to {format_quantity(left.high, 'mA')}"
    bad = left.high > bears
    return Finding(
        about=ABOUT,
        outcome=compare_dc(left, limits),
        says=f"Smooth DC it can leave on its device: {most}; "
        f"type {device.type} bears {format_quantity(bears, 'mA')}.",
        judges=Judges.FITNESS_FOR_DC,
        measured=most,
        measured_as=MeasuredAs.CALCULATED,
        limit=str(Limit("mA", at_most=bears)) if bears else "none declared",
        do_next="Fit a type that bears it, with nothing narrower above it." if bad else "",
        field="dc_residual",
        sources=citations(limits.bears_row),
    )
