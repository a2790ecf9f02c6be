"""What residual current does an earth fault in this converter circuit give?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.errors import quoted
from checkers.domain.inputs.fields import choice, group, quantity
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.question import Question
from checkers.domain.verdicts import Figure, Outcome, Result
from checkers.judgement.equipment.fault_fit import judge_faults
from checkers.judgement.equipment.fault_lines import lines_of
from checkers.judgement.equipment.type_rules import judge_by_code_alone
from checkers.physics.converter.circuits import BOOK, CIRCUITS, PLACES, Circuit
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.fault_study import FaultStudy, deciding, study_everywhere
from checkers.physics.converter.waveform_points import drawn_points
from checkers.physics.converter.waveform_values import WaveformValues
from checkers.wording.book import part

SMALLEST_LINE = 0.01  # of the r.m.s.: weaker spectral lines are not listed


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A converter circuit and the fault put into it; a device, if one is to be judged."""

    circuit: str = choice(
        tuple((key, circuit.name) for key, circuit in CIRCUITS.items()), "Converter circuit"
    )
    line_voltage: float = quantity("line_voltage", default=230.0)
    frequency: float = quantity("frequency", default=50.0)
    fault_resistance: float = quantity("fault_resistance", default=1000.0)
    smoothing: float | None = quantity("smoothing", default=None)
    source_inductance: float | None = quantity("source_inductance", default=None, advanced=True)
    link_load: float | None = quantity("link_load", default=None, advanced=True)
    delay_angle: float | None = quantity("delay_angle", default=None, advanced=True)
    switching_frequency: float | None = quantity(
        "switching_frequency",
        default=None,
        advanced=True,
        explain="Of an inverter; drives often switch at 2 kHz to 16 kHz. Twenty times the mains "
        "frequency if left out: 1 kHz at 50 Hz, as IEC 62423 tests.",
    )
    place: str = choice(
        tuple(PLACES.items()),
        "Place of the fault",
        default="",
        advanced=True,
        explain="The output of an inverter, or a DC pole; the circuit's usual one if left out.",
    )
    device: Device = group(Device, "Device", default=Device)

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        circuit = CIRCUITS[self.circuit]
        if self.place and self.place not in circuit.places:
            known = ", ".join(circuit.places)
            return {"place": f"{quoted(self.place)} is not in this circuit, which has {known}"}
        return {}

    @property
    def setting(self) -> Setting:
        """What is put into the circuit."""
        return Setting(
            line_voltage=self.line_voltage,
            frequency=self.frequency,
            fault_resistance=self.fault_resistance,
            smoothing=self.smoothing,
            source_inductance=self.source_inductance,
            link_load=self.link_load,
            delay_angle=self.delay_angle,
            place=self.place,
        )


def check(inputs: Inputs) -> Result:
    """Simulate the fault, and judge the device where one is given.

    Inputs: a circuit, its supply and its fault.
    Result: the figures of the current of the fault asked for [mA, degree, ms, %], its class,
    points to draw it by, and the least type for every fault the circuit can have.
    """
    circuit = CIRCUITS[inputs.circuit]
    studies = _studied(inputs.circuit, inputs.setting)
    rules = inputs.local_code.type_rules_on(inputs.day)
    return Result(
        findings=[
            *judge_faults(circuit, studies, inputs.device, inputs.day, inputs.switching_frequency),
            *judge_by_code_alone(rules, inputs.device.type),
        ],
        answer=_answer(circuit, studies, inputs.switching_frequency),
        cautions=(*_switching_taken(circuit, studies[0], inputs), *_plays_no_part(circuit, inputs)),
    )


@lru_cache(maxsize=4)
def _studied(circuit: str, setting: Setting) -> tuple[FaultStudy, ...]:
    """Return the faults of a circuit, kept while only the device or the code is being changed."""
    return study_everywhere(CIRCUITS[circuit], setting)


def _answer(
    circuit: Circuit, studies: Sequence[FaultStudy], switching: float | None
) -> dict[str, Any]:
    asked, worst = studies[0], deciding(tuple(studies))
    return {
        **_figures(asked.figures),
        "class": asked.waveform.value,
        "class_meaning": asked.waveform.meaning,
        "type": worst.type,
        "decided_by": part("equipment.fault-on", place=PLACES[worst.place]),
        "place": asked.place,
        "faults": [_fault(one) for one in studies],
        "harmonics": _harmonics(circuit, asked, switching),
        **_switching(circuit, asked, switching),
        "points": drawn_points(asked.trace),
    }


def _figures(figures: WaveformValues) -> dict[str, Any]:
    low = figures.longest_low_interval(BOOK.bounds.low_current)
    direct = figures.direct_share >= BOOK.bounds.direct_share
    return {
        "average": Figure(round(figures.average, 3), "mA"),
        "rms": Figure(round(figures.rms, 3), "mA"),
        "peak": Figure(round(figures.peak, 3), "mA"),
        "ripple": Figure(round(100.0 * figures.ripple, 2), "%")
        if direct
        else part("equipment.no-direct-part"),
        "longest_low_interval": Figure(round(low, 2), "degree"),
        "longest_low_time": Figure(round(low / 0.36 / figures.trace.frequency, 3), "ms"),
    }


def _fault(fault: FaultStudy) -> dict[str, Any]:
    return {
        "place": fault.place,
        "fault_resistance": Figure(round(fault.fault_resistance, 3), "ohm"),
        "class": fault.waveform.value,
        "type": fault.type,
        "average": Figure(round(fault.figures.average, 3), "mA"),
        "rms": Figure(round(fault.figures.rms, 3), "mA"),
    }


def _harmonics(circuit: Circuit, fault: FaultStudy, switching: float | None) -> list[list[float]]:
    """Return [frequency [Hz], r.m.s. [mA]] of every line that matters, lowest first."""
    lines = lines_of(circuit, fault, switching)
    least = SMALLEST_LINE * fault.figures.rms
    return [[frequency, round(rms, 3)] for frequency, rms in sorted(lines.items()) if rms > least]


def _switching(circuit: Circuit, fault: FaultStudy, given: float | None) -> dict[str, Any]:
    """Return the switching frequency that the lines stand for, where the fault sees one."""
    if not (circuit.inverter and fault.place == "output"):
        return {}
    return {"switching_frequency": Figure(given or _simulated(fault), "Hz")}


def _simulated(fault: FaultStudy) -> float:
    return round(BOOK.parts.carrier_ratio * fault.trace.frequency, 6)


def _switching_taken(circuit: Circuit, fault: FaultStudy, inputs: Inputs) -> tuple[str, ...]:
    """Name the switching frequency that was taken, where none was given and the fault sees one."""
    if inputs.switching_frequency is not None:
        return (
            () if _switching(circuit, fault, None) else (part("equipment.switching-plays-no-part"),)
        )
    if not _switching(circuit, fault, None):
        return ()
    taken = format_quantity(_simulated(fault), "Hz")
    return (part("equipment.switching-taken", frequency=taken),)


def _plays_no_part(circuit: Circuit, inputs: Inputs) -> tuple[str, ...]:
    notes = []
    if inputs.smoothing and not inputs.setting.smoothing_of(circuit):
        notes.append(part("equipment.smoothing-plays-no-part"))
    if inputs.delay_angle and not circuit.fired:
        notes.append(part("equipment.firing-plays-no-part"))
    return tuple(notes)


BRIDGE = Example(
    title="A type A device and a single-phase bridge",
    request={
        "circuit": "bridge",
        "line_voltage": "230 V",
        "fault_resistance": "1 kohm",
        "device": {"type": "A", "rated_residual_current": "30 mA"},
    },
    outcome=Outcome.PASS,
)
DRIVE = Example(
    title="A type A device and a three-phase drive",
    request={
        "circuit": "six-pulse-inverter",
        "line_voltage": "230 V",
        "fault_resistance": "1 kohm",
        "device": {"type": "A", "rated_residual_current": "30 mA"},
    },
    outcome=Outcome.FAIL,
)
NO_DEVICE = Example(
    title="A bridge between two lines, no device named",
    request={"circuit": "two-phase-bridge", "fault_resistance": "1 kohm"},
    outcome=Outcome.CANNOT_SAY,
)

CHECKER = Checker(
    slug="fault-waveform",
    title="Fault waveform",
    question="What residual current does an earth fault in this converter circuit give?",
    inputs=Inputs,
    check=check,
    examples=(BRIDGE, DRIVE, NO_DEVICE),
)
