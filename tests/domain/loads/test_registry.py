"""The catalogue of connected equipment is whole, and read strictly."""

from __future__ import annotations

import copy
import re
from typing import Any

import pytest

from checkers.domain.errors import DataError
from checkers.domain.loads.loading import load_equipment
from checkers.domain.loads.registry import FILE, LOADS
from checkers.domain.tables.data_files import data_folder, read_toml

CONTRACT = {
    "resistive",
    "dimmer",
    "switched-mode-supply",
    "led-lighting",
    "washing-machine",
    "induction-hob",
    "single-phase-drive",
    "three-phase-drive",
    "heat-pump-single-phase",
    "heat-pump-three-phase",
    "ev-charge-point",
    "pv-inverter",
    "battery-inverter",
    "ups",
    "it-equipment",
    "lift",
    "welder",
    "site-machine",
    "medical",
}
SPOILT = [
    (lambda raw: raw["load"]["welder"].update(colour="red"), "welder: unknown key 'colour'"),
    (lambda raw: raw["load"]["welder"].update(words=[]), "welder: needs words"),
    (lambda raw: raw["load"]["welder"].pop("circuits"), "welder: needs its circuits"),
    (lambda raw: raw["load"]["welder"]["circuits"].update(monthly=["bridge"]), "'monthly'"),
    (lambda raw: raw["load"]["welder"]["need"].pop(0), "no need for single-phase"),
    (lambda raw: raw["load"]["welder"]["need"][0].update(type="C"), "need 1: 'type' is 'C'"),
    (lambda raw: raw["load"]["welder"]["need"][0].update(source=[]), "cites no source"),
    (lambda raw: raw["load"]["welder"]["need"][0].update(source=["hearsay"]), "'hearsay'"),
    (lambda raw: raw["load"]["welder"]["need"][0].pop("smooth_dc"), "needs 'smooth_dc'"),
    (lambda raw: raw["load"]["welder"]["need"][0].update(smooth_dc="6 V"), "unit of current"),
    (
        lambda raw: raw["load"]["welder"]["need"][2]["also"][0].update(when="sometimes"),
        "also 1: 'when' is 'sometimes'",
    ),
    (lambda raw: raw["load"]["welder"]["figure"][0].update(about="weight"), "figure 1: 'about'"),
    (
        lambda raw: raw["load"]["welder"]["figure"][0].update(typical="50 mA"),
        "typical is above at_most",
    ),
    (lambda raw: raw["load"]["ups"].update(two_way=False), "two_way and two_way_note"),
    (lambda raw: raw["load"]["ups"].pop("trap"), "ups: needs a trap"),
    (lambda raw: raw["load"]["ups"]["trap"][0].update(source=[]), "trap 1: cites no source"),
    (lambda raw: raw["load"]["ups"]["trap"][0].update(clause="9"), "unknown key 'clause'"),
    (
        lambda raw: raw["load"]["ev-charge-point"]["rule"][0].pop("codes"),
        "needs the codes it is judged under",
    ),
    (lambda raw: raw["load"]["resistive"]["need"][0].update(supply=["line-to-line"]), "no need"),
    (lambda raw: raw["source"]["practice"].update(document="a shop"), "source practice"),
    (lambda raw: raw.update(more={}), "unknown key 'more'"),
]


@pytest.fixture
def raw() -> dict[str, Any]:
    """The file as it stands, to be spoilt."""
    return copy.deepcopy(read_toml(data_folder() / FILE, FILE))


def test_all_the_equipment_of_the_contract_is_there() -> None:
    """Every key a request may name has its entry."""
    assert set(LOADS) >= CONTRACT


@pytest.mark.parametrize("key", list(LOADS))
def test_every_entry_says_what_a_reader_needs(key: str) -> None:
    """Words to find it by, a leakage figure with its source, needs with reasons and sources."""
    load = LOADS[key]

    assert load.name
    assert load.words
    assert load.figure("leakage") is not None
    assert all(need.says.endswith(".") and need.sources for need in load.needs)
    assert all(one.source.evidence for one in load.figures)
    assert all(one.source.evidence for one in load.rules)


@pytest.mark.parametrize("key", list(LOADS))
def test_a_trap_is_short_and_asks_for_no_less_than_the_circuit(key: str) -> None:
    """Three sentences at most, and a type that is called for is one that the needs call for."""
    load = LOADS[key]
    types = {need.type for need in load.needs}

    for trap in load.traps:
        assert len(re.findall(r"[.:] [A-Z]|[.]$", trap.says)) <= 3
        assert len(trap.says) <= 260
        assert set(re.findall(r"calls for a type ([A-Z]+\+?)", trap.says)) <= types
        assert "suffices" not in trap.says or "one model" in trap.says


def test_sources_of_supply_speak_of_both_directions_and_of_islands() -> None:
    """What feeds back says so; what runs as an island names its neutral-earth bond."""
    feeding = {key for key, load in LOADS.items() if load.two_way}

    assert feeding >= {"pv-inverter", "battery-inverter", "ups", "ev-charge-point"}
    assert "neutral must be joined to earth" in LOADS["battery-inverter"].island


@pytest.mark.parametrize(("spoil", "words"), SPOILT)
def test_a_spoilt_file_is_refused_by_name(raw: dict[str, Any], spoil: Any, words: str) -> None:
    """Each fault of the file is a data error that names the row."""
    spoil(raw)

    with pytest.raises(DataError, match=words):
        load_equipment(raw, FILE)
