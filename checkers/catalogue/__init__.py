"""The checkers, one a file. CHECKERS is the only list of them."""

from __future__ import annotations

from checkers.catalogue import (
    dc_bias,
    demonstration,
    earth_electrode,
    explain,
    fault_waveform,
    leakage_budget,
    over_the_years,
    practice,
    readings,
    schedule,
    series,
    test_plan,
    type_for_load,
)
from checkers.domain.checker import Checker

CHECKERS: tuple[Checker, ...] = (
    readings.CHECKER,
    test_plan.CHECKER,
    explain.CHECKER,
    type_for_load.CHECKER,
    series.CHECKER,
    fault_waveform.CHECKER,
    dc_bias.CHECKER,
    demonstration.CHECKER,
    leakage_budget.CHECKER,
    earth_electrode.CHECKER,
    over_the_years.CHECKER,
    schedule.CHECKER,
    practice.CHECKER,
)
