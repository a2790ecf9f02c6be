"""Smooth DC through a device, against what its type bears."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from checkers.domain.device.device import DeviceType
from checkers.domain.device.readings import Waveform
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row, citations
from checkers.domain.limits.tables import rows_in
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.comparison import compare
from checkers.judgement.limits.current_bands import operating_band
from checkers.judgement.limits.numbers import reading_numbers
from checkers.wording.book import part
from checkers.wording.finding import NO_FACTS, finding, reworded

MEASURED = "dc.measured-"
"""What the code of every finding on measured smooth DC begins with."""


def tolerated_dc_row(case: Case) -> Row | None:
    """Return the row that says how much smooth DC the device's type bears, if it is known."""
    table = case.code.tables.get("standing-dc")
    if table is None or case.device.type == DeviceType.UNKNOWN:
        return None
    asked = {"type": case.device.type, "rated": case.device.rated_residual_current}
    found = rows_in(table, on=case.day, **asked)
    return found[0] if found else None


def judge_dc_fitness(case: Case) -> list[Finding]:
    """Return the finding on smooth DC through the device, where it was measured."""
    dc = case.circuit.dc_residual
    if dc is None:
        return []
    row = tolerated_dc_row(case)
    if row is None:
        return [_finding("dc.measured-type-missing", dc, Outcome.CANNOT_SAY)]
    tolerated = row.at_most(case.device.rated_residual_current)
    if row.undeclared:
        return [_nothing_declared(dc, case, row)]
    if tolerated is None or _rating_decides(dc, tolerated, case):
        return [_finding("dc.measured-rating-missing", dc, Outcome.CANNOT_SAY)]
    return [_seen_by_the_device(_compared(dc, tolerated, case, row), dc, case)]


def nothing_said_of_dc() -> str:
    """Return the caution where readings come without the smooth DC through the device."""
    return part("dc.readings-say-nothing")


def speaks_of_measured_dc(found: Finding) -> bool:
    """Tell whether a finding is on smooth DC that was measured with the readings."""
    return found.code.startswith(MEASURED)


def _rating_decides(dc: float, tolerated: float, case: Case) -> bool:
    """Tell whether a rating that is not known could make a type bear more than this."""
    unknown = case.device.rated_residual_current is None
    return unknown and case.device.senses_smooth_dc and dc > tolerated


def _seen_by_the_device(found: Finding, dc: float, case: Case) -> Finding:
    """Leave open DC that the device senses itself, up to where it must have opened."""
    band = operating_band(case, Waveform.SMOOTH_DC.value)
    if found.outcome is not Outcome.FAIL or not case.device.senses_smooth_dc:
        return found
    facts = {"measured": found.measured, "type": case.device.type, "limit": found.limit}
    if band is None or band.at_most is None or dc >= band.at_most:
        return reworded(found, "dc.measured-should-have-opened-it", facts)
    code = "dc.measured-over-declared-may-open-it"
    return reworded(found, code, facts, outcome=Outcome.CANNOT_SAY)


def _compared(dc: float, tolerated: float, case: Case, row: Row) -> Finding:
    measured = Measured(Said.FIGURE, dc, "mA")
    limit = Limit("mA", at_most=tolerated)
    spread = case.current_uncertainty(tolerated)
    outcome = compare(measured, limit, spread, JUDGING.confidence).outcome
    return _finding(
        COMPARED[outcome],
        dc,
        outcome,
        {"type": case.device.type, "tolerated": format_quantity(tolerated, "mA")},
        limit=str(limit),
        sources=citations(row),
        numbers=reading_numbers(measured, limit, spread),
    )


def _nothing_declared(dc: float, case: Case, row: Row) -> Finding:
    none = dc == 0
    return _finding(
        "dc.measured-none" if none else "dc.measured-where-none-declared",
        dc,
        Outcome.PASS if none else Outcome.FAIL,
        {"type": case.device.type},
        limit=part("dc.none-declared"),
        sources=citations(row),
    )


def _finding(
    code: str, dc: float, outcome: Outcome, facts: Mapping[str, object] = NO_FACTS, **rest: Any
) -> Finding:
    measured = format_quantity(dc, "mA")
    return finding(
        code,
        outcome,
        Judges.FITNESS_FOR_DC,
        {"measured": measured, **facts},
        measured=measured,
        measured_as=MeasuredAs.MEASURED,
        field="circuit.dc_residual",
        **rest,
    )


COMPARED = {
    Outcome.PASS: "dc.measured-within-declared",
    Outcome.FAIL: "dc.measured-over-declared",
    Outcome.BORDERLINE: "dc.measured-close-to-declared",
}
