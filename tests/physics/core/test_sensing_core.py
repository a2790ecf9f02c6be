"""The core: what a cycle of residual current does to its flux."""

from __future__ import annotations

from dataclasses import replace
from math import copysign, pi, sin

import pytest

from checkers.physics.core.primary_current import Shape
from checkers.physics.core.sensing_core import Core, Cycle, Relay, settled_cycle, signal_at_own_trip

SQUARE = Core(knee=0.05, coercive=0.3, burden=0.8, relay=Relay.FLUX_SWING)
FLAT = Core(knee=3.0, coercive=0.2, burden=0.5, relay=Relay.BOTH_PULSES)


@pytest.mark.parametrize("core", [SQUARE, FLAT])
def test_without_dc_both_half_cycles_are_alike(core: Core) -> None:
    """An alternating current alone gives equal pulses up and down."""
    cycle = settled_cycle(core, 0.0, 1.0)

    assert cycle.rise == pytest.approx(cycle.fall, rel=0.02)


@pytest.mark.parametrize("core", [SQUARE, FLAT])
def test_the_swing_shrinks_with_dc(core: Core) -> None:
    """The same alternating current swings the flux less, the more DC there is."""
    swings = [settled_cycle(core, bias, 1.0).swing for bias in (0.0, 0.5, 1.0, 2.0, 4.0)]

    assert swings == sorted(swings, reverse=True)
    assert swings[-1] < 0.5 * swings[0]


def test_dc_beyond_the_peak_leaves_a_square_core_still() -> None:
    """With the current never turning back, a square loop moves by less than 2 %."""
    assert settled_cycle(SQUARE, 2.0, 1.0).swing < 0.02


def test_a_half_wave_is_held_by_a_square_loop_and_let_go_by_a_flat_one() -> None:
    """Pulses of one direction move a type AC core once; a flat loop follows each of them."""
    square = settled_cycle(SQUARE, 0.0, 2.0, Shape.HALF_WAVE)
    flat = settled_cycle(FLAT, 0.0, 2.0, Shape.HALF_WAVE)

    assert square.swing < 0.1 * signal_at_own_trip(SQUARE)
    assert flat.rise + flat.fall > signal_at_own_trip(FLAT)


def test_dc_helps_one_pulse_and_hinders_the_other() -> None:
    """A little DC quickens one pulse and slows the other: sensitivity can go either way."""
    without, with_dc = (settled_cycle(FLAT, bias, 1.0) for bias in (0.0, 0.3))

    assert with_dc.rise > 1.02 * without.rise
    assert with_dc.fall < 0.98 * without.fall


def test_a_swing_never_exceeds_twice_saturation() -> None:
    """Saturation in both directions is all the flux there is."""
    assert settled_cycle(SQUARE, 0.0, 1000.0).swing <= 2.0


@pytest.mark.parametrize(
    ("relay", "signal"),
    [
        (Relay.FLUX_SWING, 1.0),
        (Relay.HELPED_PULSE, 2.0),
        (Relay.HINDERED_PULSE, 3.0),
        (Relay.BOTH_PULSES, 5.0),
    ],
)
def test_each_relay_reads_its_own_measure(relay: Relay, signal: float) -> None:
    """Swing, one pulse, the other, or both together."""
    assert Cycle(swing=1.0, rise=2.0, fall=3.0).signal(relay) == signal


def test_the_relay_needs_what_it_gets_at_the_own_trip_current() -> None:
    """The signal to open is that of a peak of one and no DC, for the relay fitted."""
    hindered = replace(SQUARE, relay=Relay.HINDERED_PULSE)

    assert signal_at_own_trip(SQUARE) == settled_cycle(SQUARE, 0.0, 1.0).swing
    assert signal_at_own_trip(hindered) == settled_cycle(SQUARE, 0.0, 1.0).fall


def finely_integrated(core: Core, bias: float, peak: float, *, half: bool) -> Cycle:
    """Return a settled cycle by explicit steps of a twenty-thousandth of one, all alike.

    field = knee · flux / (1 - |flux|) ± coercive + burden · d(flux)/d(angle), solved for the last.
    """
    length = 2.0 * pi / 20_000
    sines = [sin(number * length) for number in range(20_000)]
    fields = [bias + peak * (max(0.0, one) if half else one) for one in sines]
    flux = 0.0
    for _ in range(6):
        fluxes, speeds = [flux], []
        for field in fields:
            surplus = field - core.knee * flux / (1.0 - abs(flux))
            speeds.append(copysign(max(0.0, abs(surplus) - core.coercive) / core.burden, surplus))
            flux += speeds[-1] * length
            fluxes.append(flux)
    return Cycle(max(fluxes) - min(fluxes), max(speeds), -min(speeds))


@pytest.mark.parametrize(
    ("bias", "peak", "shape"), [(10.0, 12.0, Shape.SINE), (10.0, 15.0, Shape.HALF_WAVE)]
)
def test_few_steps_in_the_right_places_do_for_many(bias: float, peak: float, shape: Shape) -> None:
    """With much DC the flux moves round one crest only, and there the steps are close."""
    few = settled_cycle(FLAT, bias, peak, shape)
    many = finely_integrated(FLAT, bias, peak, half=shape is Shape.HALF_WAVE)

    assert few.swing == pytest.approx(many.swing, rel=0.01)
    assert shape is not Shape.SINE or few.fall == pytest.approx(many.fall, rel=0.01)
