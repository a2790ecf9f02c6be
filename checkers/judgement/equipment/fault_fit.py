"""Is a device built for the fault currents a circuit can give, and would it trip on one?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from checkers.domain.device.device import Device, DeviceType, Form
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.equipment.fault_lines import (
    Line,
    as_tested,
    limited_lines,
    lines_of,
    words_of,
)
from checkers.judgement.equipment.type_order import covers
from checkers.judgement.limits.numbers import figure_numbers
from checkers.physics.converter.circuits import BOOK, PLACES, Circuit
from checkers.physics.converter.fault_study import FaultStudy
from checkers.physics.converter.waveform_class import WaveformClass
from checkers.wording.book import part
from checkers.wording.finding import finding

MATTERS = 0.1  # of the r.m.s.: weaker lines are not told
NOT_PROTECTIVE: Mapping[str, str] = {
    Form.MONITOR: "equipment.monitor-for-current",
    Form.RDC_DD: "equipment.dc-detection-for-current",
}


def judge_faults(
    circuit: Circuit,
    studies: Sequence[FaultStudy],
    device: Device,
    day: date,
    switching: float | None = None,
) -> list[Finding]:
    """Return the findings on one device for all the faults of a circuit.

    Inputs: the circuit; its studied faults, the one asked for first; the device; the day; the
    switching frequency [Hz], where it is given.
    """
    why_not = NOT_PROTECTIVE.get(device.form)
    if why_not:
        return [_not_judged(why_not, "device.form")]
    if device.type == DeviceType.UNKNOWN:
        return [_not_judged("equipment.type-missing-for-current", "device.type")]
    findings = [_type_finding(one, device) for one in _worst_of_each_place(studies)]
    if not _rated_frequency(studies[0]):
        findings.append(_frequency_finding(studies[0]))
    elif covers(device.type, studies[0].type):
        findings += _trip_findings(circuit, studies[0], device, day, switching)
    return findings


def _not_judged(code: str, field: str) -> Finding:
    return finding(code, Outcome.CANNOT_SAY, Judges.FITNESS_FOR_DC, field=field)


def _worst_of_each_place(studies: Sequence[FaultStudy]) -> list[FaultStudy]:
    """Return for each place its most demanding study, the place asked for first."""
    worst: dict[str, FaultStudy] = {}
    for one in studies:
        known = worst.setdefault(one.place, one)
        if not covers(known.type, one.type):
            worst[one.place] = one
    return list(worst.values())


def _type_finding(fault: FaultStudy, device: Device) -> Finding:
    fits = covers(device.type, fault.type)
    keys = ["classes", "types"]
    if fault.waveform is WaveformClass.COMPOSITE:
        keys.append("composite")
    return finding(
        "equipment.type-sees-current" if fits else "equipment.type-blind-to-current",
        Outcome.PASS if fits else Outcome.FAIL,
        Judges.FITNESS_FOR_DC,
        {
            "place": PLACES[fault.place],
            "type": device.type,
            "meaning": fault.waveform.meaning,
            "least": fault.type,
        },
        measured=part(
            "equipment.current-of-waveform", waveform=fault.waveform.value, current=_rms(fault)
        ),
        measured_as=MeasuredAs.CALCULATED,
        limit=part("equipment.type-or-wider", type=fault.type),
        field="device.type",
        sources=tuple(BOOK.sources[key] for key in keys),
    )


def _rms(fault: FaultStudy) -> str:
    return format_quantity(fault.figures.rms, "mA", 3)


def _rated_frequency(fault: FaultStudy) -> bool:
    frequency = fault.trace.frequency
    return BOOK.bounds.lowest_frequency <= frequency <= BOOK.bounds.highest_frequency


def _frequency_finding(fault: FaultStudy) -> Finding:
    return finding(
        "equipment.frequency-outside-standards",
        Outcome.CANNOT_SAY,
        Judges.DEVICE_STANDARD,
        {"frequency": format_quantity(fault.trace.frequency, "Hz")},
        field="frequency",
        sources=(BOOK.sources["frequency"],),
    )


def _trip_findings(
    circuit: Circuit, fault: FaultStudy, device: Device, day: date, switching: float | None
) -> list[Finding]:
    """Say whether the fault asked for is large enough to be sure of a trip."""
    rated = device.rated_residual_current
    found = _operating_row(circuit, fault, device, day)
    if found is not None and found.needs_rating and rated is None:
        return [_rating_missing(found)]
    most = found.at_most(rated) if found else None
    if found is None or most is None:
        return []
    if fault.waveform is WaveformClass.COMPOSITE and not as_tested(fault, switching):
        lines = lines_of(circuit, fault, switching)
        mains = fault.trace.frequency
        return [_line_finding(fault, limited_lines(lines, mains, found, device, day), found)]
    return [_size_finding(fault, most, found)]


def _size_finding(fault: FaultStudy, most: float, row: Row) -> Finding:
    limit, sure = Limit("mA", at_least=most), fault.figures.rms >= most
    return finding(
        "equipment.fault-large-enough" if sure else "equipment.fault-too-small",
        Outcome.PASS if sure else Outcome.CANNOT_SAY,
        Judges.DEVICE_STANDARD,
        measured=part("equipment.rms", current=_rms(fault)),
        measured_as=MeasuredAs.CALCULATED,
        limit=str(limit),
        field="fault_resistance",
        sources=(row.citation,),
        numbers=figure_numbers(fault.figures.rms, limit),
    )


def _rating_missing(row: Row) -> Finding:
    return finding(
        "equipment.rating-missing-for-fault",
        Outcome.CANNOT_SAY,
        Judges.DEVICE_STANDARD,
        field="device.rated_residual_current",
        sources=(row.citation,),
    )


def _line_finding(fault: FaultStudy, lines: Sequence[Line], composite: Row) -> Finding:
    """Say of a current of other parts than the standard tests with what each line would take."""
    row = next((one.row for one in lines if one.is_enough), None)
    code = "equipment.mixed-frequencies-not-as-tested"
    return finding(
        "equipment.one-frequency-large-enough" if row else code,
        Outcome.PASS if row else Outcome.CANNOT_SAY,
        Judges.DEVICE_STANDARD,
        {"parts": words_of(lines, MATTERS * fault.figures.rms)},
        measured=part("equipment.rms", current=_rms(fault)),
        measured_as=MeasuredAs.CALCULATED,
        field="fault_resistance",
        sources=((row or composite).citation,),
    )


def _operating_row(circuit: Circuit, fault: FaultStudy, device: Device, day: date) -> Row | None:
    """Return the row with the greatest upper operating limit for the fault's waveform."""
    found = rows(
        "operating-current",
        on=day,
        made_to=device.product_standard,
        form=device.form,
        type=device.type,
        rated=device.rated_residual_current,
        waveform=_tabled_waveform(circuit, fault),
    )
    return max(
        found, key=lambda row: row.at_most(device.rated_residual_current) or 0.0, default=None
    )


def _tabled_waveform(circuit: Circuit, fault: FaultStudy) -> str:
    """Return the name the limit tables have for a fault's waveform."""
    pulses = {1: "smooth-dc", 2: "two-pulse", 3: "three-pulse"}
    return {
        WaveformClass.SINUSOIDAL: "ac",
        WaveformClass.PULSATING: "half-wave",
        WaveformClass.COMPOSITE: "composite",
        WaveformClass.SMOOTH: "smooth-dc",
    }.get(fault.waveform, pulses[circuit.lines])
