"""In TT: whether the times show that a fault ends within the disconnection time of the code."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from math import isclose

from checkers.domain.device.readings import Reading
from checkers.domain.limits.rows import Row
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, Outcome
from checkers.judgement.case import Case
from checkers.judgement.device.times_at_fault import (
    LEAST_FAULT,
    Fault,
    Timed,
    at_fault,
    depends_on_the_circuit,
    fault_of,
    in_tt,
    is_delayed,
    longest_time,
    times_on_ac,
    worst_of,
)
from checkers.judgement.electrode.disconnection import (
    disconnection_row,
    judge_disconnection,
    row_at_rating,
)
from checkers.judgement.electrode.electrode import greatest_resistance
from checkers.judgement.electrode.line_voltage import usual_line_voltage
from checkers.judgement.limits.against_limits import compare_with, finding_for
from checkers.judgement.limits.safe_rounding import rounded, rounded_down
from checkers.judgement.readings.time_verdict import as_time, remedy_for
from checkers.judgement.readings.verdict import Judged
from checkers.wording.book import part
from checkers.wording.finding import reworded

ALL_DIGITS = 9


def judge_fault_time(readings: Sequence[Reading], case: Case) -> list[Finding]:
    """Return the finding on the disconnection time in TT, where the readings tell of it.

    Inputs: the readings; the case with its system, its rating [mA] and, where known, the
    resistance of the electrode [ohm].
    Result: one finding, or none where no system, no rating or no limit is known.
    Assumption: at more current a device is no slower. A kind of circuit that a delayed device
    does not tell is left to a remark.
    """
    rated, row = case.device.rated_residual_current, disconnection_row(in_tt(case))
    if case.circuit.system != "tt" or rated is None or row is None:
        return []
    timed = times_on_ac(readings, case, row)
    if not timed or any(depends_on_the_circuit(one, case) for one in timed):
        return []
    fault = fault_of(case)
    if fault is None:
        chosen = worst_of([one for one in timed if one.current >= LEAST_FAULT * rated])
        return [_finding(chosen, case, row)] if chosen else []
    if fault.likely < rated:
        found = judge_disconnection(in_tt(case))
        return [dataclasses.replace(one, field="circuit.electrode_resistance") for one in found]
    chosen = at_fault(timed, fault, rated)
    return [_finding(chosen, case, row, fault)] if chosen else []


def judge_at_rating(
    readings: Sequence[Reading], apart: Sequence[list[Judged]], case: Case
) -> list[Finding]:
    """Return a finding for each time at the rating, where the code holds it to Chapter 41."""
    row, rated = row_at_rating(in_tt(case)), case.device.rated_residual_current
    if row is None or rated is None or case.circuit.system == "tn" or is_delayed(case):
        return []
    known = case.circuit.system == "tt"
    at_rating = [
        one
        for reading, judged in zip(readings, apart, strict=True)
        if known or not any(each.finding.outcome is Outcome.FAIL for each in judged)
        for one in times_on_ac([reading], case, row)
        if isclose(one.current, rated, rel_tol=1e-6)
    ]
    if known:
        return [_finding(one, case, row) for one in at_rating]
    return [_system_asked(one, case, row) for one in at_rating if one.outcome is not Outcome.PASS]


def _finding(one: Timed, case: Case, row: Row, fault: Fault | None = None) -> Finding:
    """Return what a time says of a fault in TT; leakage that helped it leaves a pass open."""
    helped = one.outcome is Outcome.PASS and case.leakage is not None
    outcome = Outcome.CANNOT_SAY if helped else one.outcome
    limit = longest_time(row)
    by_itself = compare_with(limit, as_time(one.reading.measured), case)
    shown = finding_for(one.reading, limit, case, by_itself)
    about = dataclasses.replace(shown, about=part("electrode.disconnection-time"), outcome=outcome)
    if helped:
        return reworded(about, "device.fault-time-helped-by-leakage")
    facts = {
        "measured": shown.measured,
        "limit": shown.limit,
        "current": format_quantity(one.current, "mA"),
        "fault": _current_words(one, case, fault),
    }
    return reworded(about, CODES[outcome], facts, do_next=_next(outcome, fault))


def _current_words(one: Timed, case: Case, fault: Fault | None) -> str:
    if fault is not None:
        likely = format_quantity(rounded(fault.likely, 3), "mA")
        return part("device.fault-current", current=likely)
    if one.outcome is not Outcome.PASS:
        return part("device.fault-current-open")
    most = rounded_down(greatest_resistance(usual_line_voltage(case.code.key), one.current))
    return part("device.fault-over", resistance=format_quantity(most, "ohm", ALL_DIGITS))


def _next(outcome: Outcome, fault: Fault | None) -> str:
    if fault is None or outcome not in (Outcome.BORDERLINE, Outcome.CANNOT_SAY):
        return remedy_for(outcome)
    least = format_quantity(rounded_down(fault.weakest), "mA")
    return part("device.nearer-current", least=least)


def _system_asked(one: Timed, case: Case, row: Row) -> Finding:
    found = _finding(one, case, row)
    return reworded(
        found,
        "device.fault-time-system-missing",
        {"limit": found.limit},
        outcome=Outcome.CANNOT_SAY,
        field="circuit.system",
    )


CODES = {
    Outcome.PASS: "device.fault-time-met",
    Outcome.FAIL: "device.fault-time-missed",
    Outcome.BORDERLINE: "device.fault-time-close",
    Outcome.CANNOT_SAY: "device.fault-time-not-shown",
}
