"""What the catalogue says of equipment, against the simulated fault of its circuits.

Two ways to the same answer: the catalogue's types come from published texts, those here from
the current alone.
"""

from __future__ import annotations

import pytest

from checkers.domain.loads.kinds import Separation
from checkers.domain.loads.registry import LOADS
from checkers.judgement.equipment.type_order import covers, greatest
from checkers.physics.converter.circuits import CIRCUITS
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.fault_study import deciding, study_everywhere

SUPPLIES = [(key, supply) for key, load in LOADS.items() for supply in load.circuits]
OF_A_CIRCUIT = [(key, supply) for key, supply in SUPPLIES if LOADS[key].circuits[supply]]
SIMULATED = {
    key: deciding(study_everywhere(circuit, Setting())).type for key, circuit in CIRCUITS.items()
}
LINES = {"single-phase": 1, "line-to-line": 2, "three-phase": 3}


@pytest.mark.parametrize(("key", "supply"), OF_A_CIRCUIT)
def test_the_type_called_for_sees_every_fault_of_the_circuits(key: str, supply: str) -> None:
    """With a silent maker and no separation, no circuit asks for more than the catalogue."""
    load = LOADS[key]
    simulated = greatest(SIMULATED[circuit] for circuit in load.circuits[supply])

    assert covers(load.need(supply, Separation.NONE).type, simulated)


@pytest.mark.parametrize(("key", "supply"), SUPPLIES)
def test_the_circuits_fit_the_supply(key: str, supply: str) -> None:
    """No circuit has more lines than its supply; one on line and neutral may repeat per line."""
    for circuit in LOADS[key].circuits[supply]:
        lines = CIRCUITS[circuit].lines

        assert lines <= LINES[supply]
        assert supply != "line-to-line" or lines == 2


@pytest.mark.parametrize(("key", "supply"), SUPPLIES)
def test_no_narrower_type_is_offered_without_a_reason(key: str, supply: str) -> None:
    """Types offered under a condition are narrower than the one called for."""
    need = LOADS[key].need(supply, Separation.NONE)

    for also in need.also:
        assert not any(covers(kind, need.type) for kind in also.types)


def test_smooth_dc_without_bound_goes_with_type_b() -> None:
    """Where only the fault loop limits smooth DC, nothing narrower than B is called for."""
    for key, supply in SUPPLIES:
        need = LOADS[key].need(supply, Separation.NONE)
        if need.smooth_dc > 10.0:
            assert need.type == "B", key


def test_a_dc_source_of_its_own_calls_for_type_b_and_is_shown_as_no_drive() -> None:
    """Modules and batteries without separation: type B (IEC 60364-7-712, 712.531.3.5.1).

    No published circuit of IEC 60755, annex B, has a source of DC in it.
    """
    without = {key for key, supply in SUPPLIES if (key, supply) not in OF_A_CIRCUIT}

    assert without == {"pv-inverter", "battery-inverter"}
    assert {
        LOADS[key].need(supply, Separation.NONE).type for key, supply in SUPPLIES if key in without
    } == {"B"}


@pytest.mark.parametrize("key", LOADS)
def test_what_stores_or_gives_dc_carries_its_cautions(key: str) -> None:
    """From the circuits and words of the catalogue alone: capacitors, modules, batteries, bonds."""
    load = LOADS[key]
    circuits = [CIRCUITS[one] for keys in load.circuits.values() for one in keys]
    due = {
        "capacitors": any(one.smoothing or one.inverter or one.boost for one in circuits),
        "modules": "from the modules" in load.waveform,
        "battery": "from the battery" in load.waveform or "battery" in load.what,
        "own-source": bool(load.island),
        "vehicle": "vehicle" in f"{load.name} {load.what}".lower(),
        "medical-it": "medical" in load.name.lower(),
    }

    assert {hazard for hazard, is_due in due.items() if is_due} <= load.hazards
