"""What the catalogue says of equipment, against the simulated fault of its circuits.

Two ways to the same answer: the catalogue's types come from published texts, those here from
the current alone.
"""

from __future__ import annotations

import pytest

from checkers.domain.load_kinds import Separation
from checkers.domain.loads import LOADS
from checkers.judgement.type_order import covers, greatest
from checkers.physics.circuits import CIRCUITS
from checkers.physics.fault_setting import Setting
from checkers.physics.fault_study import deciding, study_everywhere

SUPPLIES = [(key, supply) for key, load in LOADS.items() for supply in load.circuits]
SIMULATED = {
    key: deciding(study_everywhere(circuit, Setting())).type for key, circuit in CIRCUITS.items()
}
LINES = {"single-phase": 1, "line-to-line": 2, "three-phase": 3}


@pytest.mark.parametrize(("key", "supply"), SUPPLIES)
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
