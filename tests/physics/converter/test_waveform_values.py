"""The figures, on traces whose figures are known by calculation."""

from __future__ import annotations

from math import pi, sin, sqrt

import pytest

from checkers.physics.converter.fault_current import Trace
from checkers.physics.converter.waveform_values import WaveformValues

COUNT = 800


def figures_of(wave: list[float], cycles: int = 1) -> WaveformValues:
    """The figures of one or more mains cycles at 50 Hz."""
    return WaveformValues(Trace(tuple(wave), cycles, 50.0))


def sine(peak: float, multiple: float = 1.0, cycles: int = 1) -> list[float]:
    """A sine at a multiple of the mains frequency."""
    return [peak * sin(2 * pi * multiple * at / COUNT) for at in range(cycles * COUNT)]


def test_a_sine_has_no_average_and_its_rms() -> None:
    """A sine of 100 mA peak: no direct part, 70.71 mA r.m.s., a ratio without end."""
    figures = figures_of(sine(100.0))

    assert figures.average == pytest.approx(0.0, abs=1e-9)
    assert figures.rms == pytest.approx(100.0 / sqrt(2.0))
    assert figures.peak == pytest.approx(100.0)
    assert figures.ripple > 1e6


def test_ripple_on_a_direct_current() -> None:
    """200 mA with a sine of 10 mA r.m.s. on it has a ripple of 5 per cent."""
    figures = figures_of([200.0 + value for value in sine(10.0 * sqrt(2.0), 3.0)])

    assert figures.average == pytest.approx(200.0)
    assert figures.ripple == pytest.approx(0.05)


def test_each_frequency_is_found_with_its_rms() -> None:
    """50, 150 and 1000 Hz come out at 40, 20 and 10 mA, and nothing elsewhere."""
    parts = [(40.0, 1.0), (20.0, 3.0), (10.0, 20.0)]
    waves = [sine(rms * sqrt(2.0), multiple) for rms, multiple in parts]

    spectrum = figures_of([sum(values) for values in zip(*waves, strict=True)]).spectrum

    assert spectrum[50.0] == pytest.approx(40.0)
    assert spectrum[150.0] == pytest.approx(20.0)
    assert spectrum[1000.0] == pytest.approx(10.0, rel=1e-3)
    assert sum(value > 0.01 for value in spectrum.values()) == 3


def test_what_lies_between_the_harmonics_is_told_apart() -> None:
    """10 Hz beside 50 Hz counts as between harmonics, and 3 kHz as switching."""
    waves = (sine(14.142, 0.2, 5), sine(141.42, 1.0, 5), sine(28.284, 60.0, 5))

    figures = figures_of([sum(values) for values in zip(*waves, strict=True)], 5)

    assert figures.between_harmonics(15) == pytest.approx(10.0, rel=1e-3)
    assert figures.mains() == pytest.approx(100.0, rel=1e-3)
    assert figures.switching(15) == pytest.approx(20.0, rel=1e-2)
    assert figures.line(60) == pytest.approx(20.0, rel=1e-3)


def test_the_low_interval_runs_round_the_end() -> None:
    """A pulse in the middle of the trace leaves one interval, not two."""
    wave = [0.0] * 200 + [100.0] * 300 + [0.0] * 300

    assert figures_of(wave).longest_low_interval(6.0) == pytest.approx(225.0)


def test_six_milliamps_still_count_as_low() -> None:
    """At or under 6 mA is low; 6.1 mA is not."""
    assert figures_of([6.0] * 400 + [50.0] * 400).longest_low_interval(6.0) == pytest.approx(180.0)
    assert figures_of([6.1] * 400 + [50.0] * 400).longest_low_interval(6.0) == 0.0


def test_a_current_that_is_always_low_is_low_for_the_whole_trace() -> None:
    """Two cycles under 6 mA are 720 degrees."""
    figures = figures_of([3.0] * 2 * COUNT, 2)

    assert figures.longest_low_interval(6.0) == pytest.approx(720.0)
    assert figures.low_interval_of_each_period(6.0) == pytest.approx(360.0)


def test_every_period_must_rest_for_itself() -> None:
    """A burst rests for periods on end, yet a period of it rests only at the zeros."""
    burst = sine(100.0, 1.0, 3) + [0.0] * 2 * COUNT

    figures = figures_of(burst, 5)

    assert figures.longest_low_interval(6.0) > 700.0
    assert figures.low_interval_of_each_period(6.0) < 10.0
