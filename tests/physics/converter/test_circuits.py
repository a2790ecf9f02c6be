"""The circuits file is read strictly."""

from __future__ import annotations

import copy
from typing import Any

import pytest

from checkers.domain.errors import DataError
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.physics.converter.circuits import CIRCUITS, FILE, load_circuits

CONTRACT = {
    "no-converter",
    "phase-control",
    "burst-control",
    "half-wave",
    "half-wave-smoothed",
    "bridge",
    "half-controlled-bridge",
    "single-phase-inverter",
    "two-phase-bridge",
    "two-phase-inverter",
    "two-phase-inverter-pfc",
    "three-pulse",
    "six-pulse",
    "six-pulse-inverter",
}


@pytest.fixture
def raw() -> dict[str, Any]:
    """The file as it stands, to be spoilt."""
    return copy.deepcopy(read_toml(data_folder() / FILE, FILE))


def test_every_circuit_of_the_contract_is_there() -> None:
    """The keys are those that requests may name."""
    assert set(CIRCUITS) == CONTRACT


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (lambda raw: raw["circuit"]["bridge"].update(colour="blue"), "bridge: unknown key 'col"),
        (lambda raw: raw["circuit"]["bridge"].update(lines=4), "bridge: needs one to three lines"),
        (lambda raw: raw["circuit"]["bridge"].pop("places"), "bridge: 'places' needs"),
        (
            lambda raw: raw["circuit"]["bridge"].update(places={"dc-pole": "middle"}),
            "bridge: names nodes that nothing makes: middle",
        ),
        (lambda raw: raw["circuit"]["bridge"].update(valves=[["line1"]]), "bridge: 'valves' needs"),
        (lambda raw: raw["circuit"]["bridge"].update(link=["plus"]), "bridge: 'link' needs two"),
        (
            lambda raw: raw["circuit"]["bridge"].update(smoothing="470 ohm"),
            "bridge: 'smoothing': 'ohm' is not a unit",
        ),
        (
            lambda raw: raw["circuit"]["two-phase-inverter-pfc"].update(boost={"ratio": 1.2}),
            "needs nodes and ratio",
        ),
        (lambda raw: raw["parts"].update(steps_per_cycle=801), "whole number of carrier periods"),
        (lambda raw: raw["classes"].update(smooth_ripple=10), "must be a share"),
        (lambda raw: raw.update(more={}), "unknown key 'more'"),
    ],
)
def test_a_spoilt_file_is_refused_by_name(raw: dict[str, Any], spoil: Any, words: str) -> None:
    """Each fault of the file is a data error that names the row."""
    spoil(raw)

    with pytest.raises(DataError, match=words):
        load_circuits(raw)
