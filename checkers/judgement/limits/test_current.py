"""The current a test really drives, from the multiple or the current that was set."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.device.readings import Reading
from checkers.domain.limits.instrument_steps import STEPS
from checkers.judgement.case import Case


@dataclass(frozen=True, slots=True)
class TestCurrent:
    """A test current [mA], and the multiple of the rating that people call it by.

    `nominal` is None where the current is given and there is no rating to compare with.
    """

    current: float
    nominal: float | None


def level_of(reading: Reading, case: Case) -> TestCurrent | None:
    """Return the level of a test, or None where what was given does not tell it.

    Inputs: a reading with its multiple or its current [mA]; the case with the rating.
    Assumption: off AC the multiples 1 and 5 are the names of steps, which drive so much
    more as data/steps.toml says; any other multiple is taken as the current itself.
    """
    rated = case.device.rated_residual_current
    if reading.current is not None:
        return TestCurrent(reading.current, reading.current / rated if rated else None)
    if reading.multiple is None or rated is None:
        return None
    named = reading.multiple in STEPS.named
    factor = step_factor(case, reading.waveform) if named else 1.0
    return TestCurrent(round(reading.multiple * factor * rated, 9), reading.multiple)


def step_factor(case: Case, waveform: str) -> float:
    """Return by how much the steps named 1 and 5 exceed their names on a waveform."""
    device = case.device
    return STEPS.factor(waveform, device.form, device.rated_residual_current)
