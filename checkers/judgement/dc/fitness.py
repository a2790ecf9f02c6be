"""Smooth DC through a device, against what its type bears."""

from __future__ import annotations

import dataclasses

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

ABOUT = "smooth DC through the device"
FIND_THE_DC = (
    "Find where the DC comes from and take it away, or fit a type that bears it; then test again."
)
SAID_NOTHING = (
    "These readings say nothing of fitness for DC: measure the smooth DC through the device "
    "with a DC-reading clamp, loads on, and check its type against the equipment."
)


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
        return [_type_not_known(dc)]
    tolerated = row.at_most(case.device.rated_residual_current)
    if row.undeclared:
        return [_nothing_declared(dc, case, row)]
    if tolerated is None or _rating_decides(dc, tolerated, case):
        return [_rating_not_known(dc)]
    finding = _compared(dc, tolerated, case, row)
    return [_seen_by_the_device(finding, dc, case)]


def _rating_decides(dc: float, tolerated: float, case: Case) -> bool:
    """Tell whether a rating that is not known could make a type bear more than this."""
    unknown = case.device.rated_residual_current is None
    return unknown and case.device.senses_smooth_dc and dc > tolerated


def _seen_by_the_device(finding: Finding, dc: float, case: Case) -> Finding:
    """Leave open DC that the device senses itself, up to where it must have opened."""
    band = operating_band(case, Waveform.SMOOTH_DC.value)
    if finding.outcome is not Outcome.FAIL or not case.device.senses_smooth_dc:
        return finding
    if band is None or band.at_most is None or dc >= band.at_most:
        says = f"{finding.measured} of smooth DC should have opened a type {case.device.type}."
        return dataclasses.replace(finding, says=says)
    says = (
        f"{finding.measured} is more than type {case.device.type} is declared to bear "
        f"({finding.limit}); it senses DC and may open, but its AC operation is not assured."
    )
    return dataclasses.replace(finding, says=says, outcome=Outcome.CANNOT_SAY)


def _compared(dc: float, tolerated: float, case: Case, row: Row) -> Finding:
    measured = Measured(Said.FIGURE, dc, "mA")
    limit = Limit("mA", at_most=tolerated)
    spread = case.current_uncertainty(tolerated)
    compared = compare(measured, limit, spread, JUDGING.confidence)
    words = f"Type {case.device.type} bears {format_quantity(tolerated, 'mA')} of smooth DC"
    says = {
        Outcome.PASS: f"{words}; {measured} was measured, at that moment.",
        Outcome.FAIL: f"{words}; {measured} can blind it, and the button may still work.",
        Outcome.BORDERLINE: f"{words}; {measured} is too close to tell with this uncertainty.",
    }[compared.outcome]
    finding = _finding(dc, compared.outcome, says, row=row, limit=str(limit))
    numbers = reading_numbers(measured, limit, spread)
    return dataclasses.replace(finding, numbers=numbers)


def _nothing_declared(dc: float, case: Case, row: Row) -> Finding:
    if dc == 0:
        says = "No smooth DC was measured, at that moment."
        return _finding(dc, Outcome.PASS, says, row=row, limit="none declared")
    says = (
        f"No smooth DC is declared for type {case.device.type}; "
        f"{format_quantity(dc, 'mA')} can blind it, and the button may still work."
    )
    return _finding(dc, Outcome.FAIL, says, row=row, limit="none declared")


def _type_not_known(dc: float) -> Finding:
    says = "How much smooth DC the device bears depends on its type, which is not given."
    return _finding(dc, Outcome.CANNOT_SAY, says, do_next="Read the type symbol on the device.")


def _rating_not_known(dc: float) -> Finding:
    says = "How much smooth DC this type bears depends on its rating, which is not given."
    return _finding(dc, Outcome.CANNOT_SAY, says, do_next="Read IΔn on the device.")


def _finding(  # noqa: PLR0913  # the parts of a finding that differ here
    dc: float,
    outcome: Outcome,
    says: str,
    *,
    row: Row | None = None,
    limit: str = "",
    do_next: str = "",
) -> Finding:
    bad = outcome in (Outcome.FAIL, Outcome.BORDERLINE)
    return Finding(
        about=ABOUT,
        outcome=outcome,
        says=says,
        judges=Judges.FITNESS_FOR_DC,
        measured=format_quantity(dc, "mA"),
        measured_as=MeasuredAs.MEASURED,
        limit=limit,
        do_next=FIND_THE_DC if bad else do_next,
        field="circuit.dc_residual",
        sources=citations(row),
    )
