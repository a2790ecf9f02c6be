"""Every earth fault a circuit can have, studied: its current, figures, class and least type."""

from __future__ import annotations

from dataclasses import dataclass, replace

from checkers.physics.converter.circuits import BOUNDS, EARTH, Bounds, Circuit
from checkers.physics.converter.fault_current import Trace, simulate
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.waveform_class import TYPES, WaveformClass, classify, least_type
from checkers.physics.converter.waveform_values import WaveformValues


@dataclass(frozen=True, slots=True)
class FaultStudy:
    """One fault: where, through what resistance [ohm], and what it makes."""

    place: str
    fault_resistance: float
    trace: Trace
    figures: WaveformValues
    waveform: WaveformClass
    type: str


def study(circuit: Circuit, setting: Setting, bounds: Bounds = BOUNDS) -> FaultStudy:
    """Return the study of the fault that a setting asks for."""
    trace = simulate(circuit, setting)
    figures = WaveformValues(trace)
    waveform = classify(figures, setting.fault_resistance, bounds)
    return FaultStudy(
        place=setting.place_in(circuit),
        fault_resistance=setting.fault_resistance,
        trace=trace,
        figures=figures,
        waveform=waveform,
        type=least_type(waveform, figures, setting.fault_resistance, bounds),
    )


def study_everywhere(
    circuit: Circuit, setting: Setting, bounds: Bounds = BOUNDS
) -> tuple[FaultStudy, ...]:
    """Return the fault asked for, and then the others that decide the device type.

    A device must see a fault in every place of the circuit. Where a smoothed pole feeds the
    fault straight, a weaker fault is smoother: there the one that only just trips a 30 mA
    device is studied as well.
    """
    asked = setting.place_in(circuit)
    others = [replace(setting, place=place) for place in circuit.places if place != asked]
    if circuit.link and EARTH in circuit.link and setting.smoothing_of(circuit):
        weak = 1000.0 * setting.line_voltage / bounds.trip_current
        others.append(replace(setting, fault_resistance=weak))
    return tuple(study(circuit, one, bounds) for one in (setting, *others))


def deciding(studies: tuple[FaultStudy, ...]) -> FaultStudy:
    """Return the study that asks for the most of a device; the first one among equals."""
    return max(studies, key=lambda one: TYPES.index(one.type))
