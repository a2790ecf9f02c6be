"""The stepped simulation: what must hold of it whatever the circuit."""

from __future__ import annotations

from dataclasses import replace
from time import perf_counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.physics.converter.circuits import CIRCUITS
from checkers.physics.converter.fault_current import simulate
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.fault_study import study_everywhere
from checkers.physics.converter.waveform_values import WaveformValues

EVERY_FAULT = [(key, place) for key, circuit in CIRCUITS.items() for place in circuit.places]


@pytest.mark.parametrize(("key", "place"), EVERY_FAULT)
def test_it_has_settled(key: str, place: str) -> None:
    """With one more window before it, the same current comes out."""
    circuit, setting = CIRCUITS[key], Setting(place=place)
    once = simulate(circuit, setting).currents
    twice = simulate(replace(circuit, cycles=2 * circuit.cycles), setting).currents[-len(once) :]

    greatest = max(map(abs, once))
    assert max(abs(a - b) for a, b in zip(once, twice, strict=True)) < 0.01 * greatest


@pytest.mark.parametrize("key", ["half-wave", "bridge", "three-pulse", "six-pulse"])
def test_a_fault_of_twice_the_resistance_carries_half(key: str) -> None:
    """Where the source is stiff, Ohm's law scales the whole shape."""
    one = WaveformValues(simulate(CIRCUITS[key], Setting(fault_resistance=1000.0)))
    two = WaveformValues(simulate(CIRCUITS[key], Setting(fault_resistance=2000.0)))

    assert two.average == pytest.approx(one.average / 2, rel=0.01)
    assert two.rms == pytest.approx(one.rms / 2, rel=0.01)


@pytest.mark.parametrize("key", ["bridge", "two-phase-bridge", "six-pulse"])
def test_the_other_pole_carries_the_same_the_other_way(key: str) -> None:
    """The two poles of a plain bridge are mirror images."""
    circuit = CIRCUITS[key]
    other = replace(circuit, places={"dc-pole": "minus"})

    plus, minus = (WaveformValues(simulate(one, Setting())) for one in (circuit, other))

    assert minus.average == pytest.approx(-plus.average, rel=1e-3)
    assert minus.rms == pytest.approx(plus.rms, rel=1e-3)


def test_a_loaded_link_without_smoothing_drags_its_pole_below_earth() -> None:
    """Between two lines, a heavy load carries current back while both lines are negative."""
    circuit = CIRCUITS["two-phase-bridge"]

    idle = simulate(circuit, Setting(link_load=100_000.0)).currents
    loaded = simulate(circuit, Setting(link_load=50.0)).currents

    assert min(idle) > -6.0
    assert min(loaded) < -100.0


def test_smoothing_holds_the_loaded_pole_up_again() -> None:
    """With a link capacitor the pole rests instead, for a sixth of the period."""
    circuit = CIRCUITS["two-phase-bridge"]
    setting = Setting(link_load=500.0, smoothing=470.0)

    figures = WaveformValues(simulate(circuit, setting))

    assert figures.longest_low_interval(6.0) == pytest.approx(60.0, abs=4.0)


def test_smoothing_does_not_smooth_the_fault_of_an_earthed_bridge() -> None:
    """The link capacitor of a bridge has no pole on earth, so a fault still pulses."""
    circuit = CIRCUITS["bridge"]

    plain, smoothed = (
        WaveformValues(simulate(circuit, Setting(smoothing=smoothing)))
        for smoothing in (0.0, 1000.0)
    )

    assert smoothed.average == pytest.approx(plain.average, rel=0.01)


def test_source_inductance_lowers_the_average_of_a_strong_fault() -> None:
    """Lines take turns more slowly through an inductance, which costs voltage."""
    circuit = CIRCUITS["three-pulse"]

    stiff, soft = (
        WaveformValues(
            simulate(circuit, Setting(fault_resistance=10.0, source_inductance=inductance))
        )
        for inductance in (0.0, 5.0)
    )

    assert soft.average < 0.95 * stiff.average


def test_a_bare_source_is_allowed() -> None:
    """No inductance at all is a legal input and changes little at 1 kohm."""
    with_some = WaveformValues(simulate(CIRCUITS["six-pulse"], Setting()))
    without = WaveformValues(simulate(CIRCUITS["six-pulse"], Setting(source_inductance=0.0)))

    assert without.average == pytest.approx(with_some.average, rel=0.01)


SETTINGS = st.builds(
    Setting,
    frequency=st.sampled_from([16.7, 50.0, 60.0, 400.0]),
    fault_resistance=st.floats(0.1, 1e6),
    smoothing=st.sampled_from([None, 0.0, 1.0, 10_000.0]),
    source_inductance=st.floats(0.0, 100.0),
    link_load=st.floats(0.5, 1e7),
)


@settings(max_examples=60, deadline=None)
@given(fault=st.sampled_from(EVERY_FAULT), setting=SETTINGS)
def test_no_current_is_more_than_the_supply_can_drive(
    fault: tuple[str, str], setting: Setting
) -> None:
    """Whatever is put in, the fault sees at most the lines' and the link's voltage together."""
    key, place = fault

    currents = simulate(CIRCUITS[key], replace(setting, place=place)).currents

    assert max(map(abs, currents)) * setting.fault_resistance / 1000.0 < 4.0 * setting.peak


@pytest.mark.parametrize("key", list(CIRCUITS))
def test_it_is_quick(key: str) -> None:
    """A steady mains cycle takes well under 100 ms, all faults of a circuit included."""
    times = []
    for _ in range(3):
        start = perf_counter()
        studies = study_everywhere(CIRCUITS[key], Setting())
        times.append(perf_counter() - start)
    cycles = sum(one.trace.cycles for one in studies)

    assert min(times) / cycles < 0.1
