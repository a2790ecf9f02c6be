"""A circuit is drawn with what its table of valves holds."""

from __future__ import annotations

import re

import pytest

from build_tools.drawings.circuits.converter_circuit import conductors, converter_circuit
from checkers.physics.converter.circuits import CIRCUITS

TRIANGLE = re.compile(r'<path d="M[^"]+Z" class="picture__part"/>')


@pytest.mark.parametrize("key", CIRCUITS)
def test_there_is_one_valve_sign_for_each_valve(key: str) -> None:
    """No valve is left out and none drawn twice."""
    assert len(CIRCUITS[key].valves) == len(TRIANGLE.findall(converter_circuit(key).svg))


@pytest.mark.parametrize("key", CIRCUITS)
def test_the_core_is_round_all_supply_conductors(key: str) -> None:
    """The ring spans the first and the last of them."""
    drawn = converter_circuit(key).svg
    ring = re.search(r'<ellipse cx="[\d.]+" cy="([\d.]+)" rx="[\d.]+" ry="([\d.]+)"', drawn)
    assert ring is not None
    middle, half = float(ring[1]), float(ring[2])
    heights = [float(y) for y in re.findall(r'<path d="M26 ([\d.]+)L', drawn)]

    assert len(conductors(CIRCUITS[key])) == len(heights)
    assert all(middle - half < y < middle + half for y in heights)


def test_the_neutral_is_drawn_only_where_it_is_used() -> None:
    """A bridge between lines has none; a star has."""
    assert conductors(CIRCUITS["six-pulse"]) == ["line1", "line2", "line3"]
    assert conductors(CIRCUITS["three-pulse"])[-1] == "earth"


def test_each_place_of_a_fault_can_be_drawn() -> None:
    """The output and every DC pole."""
    for key, circuit in CIRCUITS.items():
        drawings = {converter_circuit(key, place).svg for place in circuit.places}
        assert len(drawings) == len(circuit.places)
