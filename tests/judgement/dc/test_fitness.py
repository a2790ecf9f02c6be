"""A finding on measured smooth DC is known by its code, and not by how it is worded."""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.judgement.case import Case
from checkers.judgement.dc.fitness import judge_dc_fitness, speaks_of_measured_dc

DAY = date(2026, 11, 24)


@pytest.mark.parametrize("kind", ["unknown", "AC", "A", "F", "B", "B+"])
@pytest.mark.parametrize("rated", [None, 30.0, 300.0])
@pytest.mark.parametrize("dc", [0.0, 6.0, 10.0, 50.0, 700.0])
def test_whatever_is_found_of_measured_dc_is_known_by_its_code(
    kind: str, rated: float | None, dc: float
) -> None:
    """A new code of it that is named otherwise would go unseen where causes are weighed."""
    device = Device(type=kind, rated_residual_current=rated)
    case = Case(device, Circuit(dc_residual=dc), Instrument(), CODES["gb"], DAY)
    (found,) = judge_dc_fitness(case)

    assert speaks_of_measured_dc(found)
