"""The smooth DC that the maker of equipment declares, against what a device bears."""

from __future__ import annotations

from datetime import date

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device, DeviceType
from checkers.domain.limits.rows import citations
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.series.dc.fitness import compare_dc
from checkers.judgement.series.dc.fitness_words import bearable
from checkers.judgement.series.dc.flow_words import amount
from checkers.judgement.series.dc.limits import DCLimits, dc_limits
from checkers.judgement.series.dc.sources import Bounds, left_unseen
from checkers.wording.finding import finding

CODES = {
    Outcome.PASS: "series.declared-dc-borne",
    Outcome.FAIL: "series.declared-dc-too-much",
    Outcome.CANNOT_SAY: "series.declared-dc-perhaps-too-much",
}


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
    bears, most = limits.bears or 0.0, amount(left)
    outcome = compare_dc(left, limits)
    return finding(
        CODES[outcome],
        outcome,
        Judges.FITNESS_FOR_DC,
        {"most": most, "type": device.type, "bears": format_quantity(bears, "mA")},
        measured=most,
        measured_as=MeasuredAs.CALCULATED,
        limit=bearable(bears),
        field="dc_residual",
        sources=citations(limits.bears_row),
    )
