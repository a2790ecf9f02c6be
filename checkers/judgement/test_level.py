"""The current a test really drives, from the multiple or the current that was set."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.limits import rows
from checkers.domain.readings import HALF_WAVES, Reading, Waveform
from checkers.judgement.case import Case

FULL_SET = (1.0, 5.0)


@dataclass(frozen=True, slots=True)
class Level:
    """A test current [mA], and the multiple of the rating that people call it by.

    `nominal` is None where the current is given and there is no rating to compare with.
    """

    current: float
    nominal: float | None


def level_of(reading: Reading, case: Case) -> Level | None:
    """Return the level of a test, or None where what was given does not tell it.

    Inputs: a reading with its multiple or its current [mA]; the case with the rating.
    Assumption: on a half wave the multiples 1 and 5 (and one half) are the names of
    the steps, which drive the r.m.s. current of the limit table (1.4 times as much, or
    twice for small ratings); any other multiple is taken as the current itself.
    """
    rated = case.device.rated_residual_current
    if reading.current is not None:
        return Level(reading.current, reading.current / rated if rated else None)
    if reading.multiple is None or rated is None:
        return None
    factor = half_wave_factor(case) if _names_a_step(reading) else 1.0
    return Level(round(reading.multiple * factor * rated, 9), reading.multiple)


def half_wave_factor(case: Case) -> float:
    """Return by how much a half-wave step exceeds its name: the lowest multiple tabulated."""
    asked = case.device_asked | {"waveform": Waveform.HALF_WAVE.value, "type": None}
    found = rows("trip-time", on=case.day, made_to=case.made_to, **asked)
    multiples = [row.when.multiple for row in found if row.when.multiple is not None]
    return min(multiples, default=1.0)


def _names_a_step(reading: Reading) -> bool:
    return reading.waveform in HALF_WAVES and reading.multiple in FULL_SET
