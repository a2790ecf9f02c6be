"""The search for the current that opens a device while DC flows."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.physics.core.primary_current import Shape
from checkers.physics.core.sensing_core import Core, Cycle, Relay, settled_cycle, signal_at_own_trip
from checkers.physics.core.trip_under_bias import peak_to_trip, peaks_to_trip

CORES = st.builds(
    Core,
    knee=st.floats(0.01, 5.0),
    coercive=st.floats(0.05, 0.5),
    burden=st.floats(0.3, 1.2),
    relay=st.sampled_from(Relay),
)
SQUARE = Core(knee=0.05, coercive=0.3, burden=0.8, relay=Relay.FLUX_SWING)


@given(CORES)
@settings(max_examples=40, deadline=None)
def test_without_dc_every_core_trips_at_its_own_trip_current(core: Core) -> None:
    """No DC, no change."""
    assert peak_to_trip(core, 0.0) == pytest.approx(1.0, rel=2e-3)


@given(CORES, st.floats(0.0, 50.0))
@settings(max_examples=60, deadline=None)
def test_the_peak_found_gives_the_relay_its_signal(core: Core, bias: float) -> None:
    """At the answer the relay gets what it needs, and 5 % below it gets less."""
    peak, wanted = peak_to_trip(core, bias), signal_at_own_trip(core)

    assert settled_cycle(core, bias, peak * 1.01).signal(core.relay) >= wanted * 0.999
    assert settled_cycle(core, bias, peak * 0.95).signal(core.relay) < wanted


@given(CORES, st.floats(0.1, 30.0), st.floats(0.2, 5.0))
@settings(max_examples=40, deadline=None)
def test_the_answer_does_not_depend_on_where_the_search_starts(
    core: Core, bias: float, share: float
) -> None:
    """A guess shortens the search and changes nothing else."""
    guessed = peak_to_trip(core, bias, expected=share * (1.0 + bias))

    assert guessed == pytest.approx(peak_to_trip(core, bias), rel=3e-3)


def test_a_row_of_answers_is_the_same_as_single_ones() -> None:
    """Each answer of a curve is the one that is found alone."""
    biases = (0.0, 0.2, 0.6, 1.5, 6.0)

    row = peaks_to_trip(SQUARE, biases)

    assert row == pytest.approx([peak_to_trip(SQUARE, bias) for bias in biases], rel=3e-3)


def test_no_half_wave_trips_a_core_that_holds_its_flux() -> None:
    """A square loop answers to no pulsating direct current, however great."""
    assert peak_to_trip(SQUARE, 0.0, Shape.HALF_WAVE) == inf


@pytest.mark.parametrize("bias", [1.0, 10.0, 300.0, 1500.0])
def test_much_dc_needs_about_as_much_peak(bias: float) -> None:
    """To turn a saturated core back, the negative crest must pass the DC, and a little more."""
    assert bias < peak_to_trip(SQUARE, bias) < bias + 1.0 + 3.0 * bias**0.5


@pytest.mark.parametrize(
    "surplus",
    [
        lambda share: share**10 - 1.0,
        lambda share: 1.0 - share**-10,
    ],
    ids=["flat below and steep above", "steep below and flat above"],
)
@pytest.mark.parametrize("start", [0.01, 100.0])
def test_a_crossing_is_found_where_one_side_is_steep(
    monkeypatch: pytest.MonkeyPatch, surplus: Callable[[float], float], start: float
) -> None:
    """At a share of one, though the straight line always meets the same side.

    Source: [1] x^10 - 1 is the textbook case in which false position alone creeps: S. C. Chapra,
    R. P. Canale, Numerical Methods for Engineers, "Pitfalls of the False-Position Method"
    (from memory).
    """
    core, crossing = replace(SQUARE, knee=0.0625), 7.0

    def cycle(core: Core, _bias: float, peak: float, _shape: Shape) -> Cycle:
        return Cycle(signal_at_own_trip(core) + surplus(peak / crossing), 0.0, 0.0)

    monkeypatch.setattr("checkers.physics.core.trip_under_bias.settled_cycle", cycle)

    found = peak_to_trip.__wrapped__(core, 1.0, expected=start * crossing)
    assert found == pytest.approx(crossing, rel=1e-3)
