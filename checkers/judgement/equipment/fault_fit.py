"""Is a device built for the fault currents a circuit can give, and would it trip on one?"""

from __future__ import annotations

from collections.abc import Sequence
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

SIZE = "size of this fault"
NO_DEVICE = (
    "Nothing was judged, because no device type was given: the answer describes the current "
    "and the least type that is built to see it."
)
ASK_THE_MANUFACTURER = (
    "Ask the manufacturer for the trip current at these frequencies, or reckon with a device that "
    "stays closed until the mains part alone is large enough."
)
MATTERS = 0.1  # of the r.m.s.: weaker lines are not told
NOT_PROTECTIVE = {
    Form.MONITOR: "A monitor warns and does not trip: it is not judged as protection.",
    Form.RDC_DD: "6 mA DC detection works beside an RCD: name the RCD to have it judged.",
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
    why_not = NOT_PROTECTIVE.get(Form(device.form))
    if why_not or device.type == DeviceType.UNKNOWN:
        return [_not_judged(why_not or NO_DEVICE, "device.form" if why_not else "device.type")]
    findings = [_type_finding(one, device) for one in _worst_of_each_place(studies)]
    if not _rated_frequency(studies[0]):
        findings.append(_frequency_finding(studies[0]))
    elif covers(device.type, studies[0].type):
        findings += _trip_findings(circuit, studies[0], device, day, switching)
    return findings


def _not_judged(says: str, field: str) -> Finding:
    return Finding(
        about="device type for this current",
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.FITNESS_FOR_DC,
        field=field,
    )


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
    verb = "is built to see" if fits else "is not built to see"
    keys = ["classes", "types"]
    if fault.waveform is WaveformClass.COMPOSITE:
        keys.append("composite")
    return Finding(
        about=f"fault on {PLACES[fault.place]}",
        outcome=Outcome.PASS if fits else Outcome.FAIL,
        says=f"A type {device.type} {verb} this current: {fault.waveform.meaning}.",
        judges=Judges.FITNESS_FOR_DC,
        measured=f"{fault.waveform.value}, {format_quantity(fault.figures.rms, 'mA', 3)} r.m.s.",
        measured_as=MeasuredAs.CALCULATED,
        limit=f"type {fault.type} or wider",
        do_next="" if fits else f"Fit a type {fault.type}, with nothing narrower above it.",
        field="device.type",
        sources=tuple(BOOK.sources[key] for key in keys),
    )


def _rated_frequency(fault: FaultStudy) -> bool:
    frequency = fault.trace.frequency
    return BOOK.bounds.lowest_frequency <= frequency <= BOOK.bounds.highest_frequency


def _frequency_finding(fault: FaultStudy) -> Finding:
    return Finding(
        about="mains frequency",
        outcome=Outcome.CANNOT_SAY,
        says=f"At {format_quantity(fault.trace.frequency, 'Hz')} the limits of the product "
        "standards do not hold: ask the maker for the trip current at that frequency.",
        judges=Judges.DEVICE_STANDARD,
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
    sure = fault.figures.rms >= most
    return [
        Finding(
            about=SIZE,
            outcome=Outcome.PASS if sure else Outcome.CANNOT_SAY,
            says="The fault is large enough that a sound device must trip."
            if sure
            else "A sound device may stay closed on a fault as small as this; it must trip "
            "when the fault grows to the limit.",
            judges=Judges.DEVICE_STANDARD,
            measured=f"{format_quantity(fault.figures.rms, 'mA', 3)} r.m.s.",
            measured_as=MeasuredAs.CALCULATED,
            limit=str(Limit("mA", at_least=most)),
            field="fault_resistance",
            sources=(found.citation,),
            numbers=figure_numbers(fault.figures.rms, Limit("mA", at_least=most)),
        )
    ]


def _rating_missing(row: Row) -> Finding:
    return Finding(
        about=SIZE,
        outcome=Outcome.CANNOT_SAY,
        says="The rated residual current is not given, and it decides whether a sound device must "
        "trip on a fault of this size.",
        judges=Judges.DEVICE_STANDARD,
        do_next="Read IΔn on the device.",
        field="device.rated_residual_current",
        sources=(row.citation,),
    )


def _line_finding(fault: FaultStudy, lines: Sequence[Line], composite: Row) -> Finding:
    """Say of a current of other parts than the standard tests with what each line would take."""
    enough = [one for one in lines if one.is_enough]
    rms = fault.figures.rms
    parts = words_of(lines, MATTERS * rms)
    if enough:
        says = f"One part alone is large enough that a sound device must trip: {parts}."
    else:
        says = (
            "That a sound device must trip cannot be said: the limit for mixed frequencies was "
            f"tested with other parts than these. Of this current {parts}."
        )
    row = enough[0].row if enough else None
    return Finding(
        about=SIZE,
        outcome=Outcome.PASS if enough else Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.DEVICE_STANDARD,
        measured=f"{format_quantity(rms, 'mA', 3)} r.m.s.",
        measured_as=MeasuredAs.CALCULATED,
        do_next="" if enough else ASK_THE_MANUFACTURER,
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
