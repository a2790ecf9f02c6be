"""The class and the type follow from the current alone."""

from __future__ import annotations

from math import pi, sin

import pytest

from checkers.physics.converter.circuits import CIRCUITS
from checkers.physics.converter.fault_current import Trace
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.fault_study import deciding, study, study_everywhere
from checkers.physics.converter.waveform_class import WaveformClass, classify, least_type
from checkers.physics.converter.waveform_values import WaveformValues

COUNT = 800
REFERENCE = 1000.0


def shaped(rest: float, ripple: float = 0.0, direct: float = 200.0) -> WaveformValues:
    """A direct current that rests at nothing for so many degrees, with a sine on the rest."""
    resting = round(COUNT * rest / 360.0)
    wave = [
        0.0 if at < resting else direct + ripple * sin(2 * pi * 6 * at / COUNT)
        for at in range(COUNT)
    ]
    return WaveformValues(Trace(tuple(wave), 1, 50.0))


@pytest.mark.parametrize(
    ("rest", "expected"),
    [
        (180.0, WaveformClass.PULSATING),
        (150.3, WaveformClass.PULSATING),
        (149.4, WaveformClass.RIPPLED),
        (60.0, WaveformClass.RIPPLED),
    ],
)
def test_pulsating_needs_150_degrees_of_rest(rest: float, expected: WaveformClass) -> None:
    """Pulsating DC is at or under 6 mA for at least 150 degrees (IEC 62752:2024, 3.3.1.2)."""
    assert classify(shaped(rest), REFERENCE) is expected


@pytest.mark.parametrize(
    ("ripple", "expected"), [(20.0, WaveformClass.SMOOTH), (30.0, WaveformClass.RIPPLED)]
)
def test_smooth_means_ripple_under_ten_per_cent(ripple: float, expected: WaveformClass) -> None:
    """7 per cent of ripple is smooth and 11 per cent is not (10 per cent is from memory)."""
    assert classify(shaped(0.0, ripple), REFERENCE) is expected


def test_a_small_fault_is_of_the_same_class_as_a_large_one() -> None:
    """Through 50 kohm a rectified current stays under 6 mA all the time and is no less direct."""
    circuit = CIRCUITS["six-pulse"]

    small = study(circuit, Setting(fault_resistance=50_000.0))
    large = study(circuit, Setting(fault_resistance=10.0))

    assert small.figures.peak < 7.0
    assert small.waveform is large.waveform is WaveformClass.RIPPLED


def test_a_composite_current_with_much_direct_current_needs_type_b() -> None:
    """A type F is tested with 10 mA of smooth DC: more, and only a type B is built for it."""
    figures = study(CIRCUITS["single-phase-inverter"], Setting()).figures
    lifted = WaveformValues(Trace(tuple(i + 12.0 for i in figures.trace.currents), 5, 50.0))

    assert least_type(WaveformClass.COMPOSITE, figures, REFERENCE) == "F"
    assert least_type(WaveformClass.COMPOSITE, lifted, REFERENCE) == "B"


def test_a_drive_is_decided_by_its_worst_fault() -> None:
    """A fault on a DC pole of an inverter between two lines asks for more than its output."""
    studies = study_everywhere(CIRCUITS["two-phase-inverter"], Setting())

    assert studies[0].place == "output"
    assert deciding(studies).place == "dc-pole"
    assert deciding(studies).type == "B"


def test_a_smoothed_pole_is_studied_with_a_weak_fault_as_well() -> None:
    """A strong fault empties the capacitor and pulses; a weak one on the same pole is smooth."""
    studies = study_everywhere(
        CIRCUITS["half-wave-smoothed"], Setting(fault_resistance=1.0, smoothing=100.0)
    )

    assert studies[0].waveform is WaveformClass.PULSATING
    assert deciding(studies).type == "B"
    assert deciding(studies).waveform is WaveformClass.SMOOTH
