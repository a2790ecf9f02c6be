"""At which residual current a device trips, on each waveform."""

from __future__ import annotations

from checkers.domain.device.readings import HALF_WAVES, Waveform
from checkers.physics.condition.state import Handling, Unit
from checkers.physics.response.attempt import Attempt
from checkers.physics.scatter import SCATTER

CUTS = {
    Waveform.HALF_WAVE.value: 1.0,
    Waveform.HALF_WAVE_90.value: SCATTER.half_wave_90_ratio.typical,
    Waveform.HALF_WAVE_135.value: SCATTER.half_wave_135_ratio.typical,
}


def trip_current(unit: Unit, waveform: str, dc_shift: float) -> float:
    """Return the current at which a device trips [mA r.m.s., or mA of smooth DC].

    Inputs: the device; the waveform that really flows; the factor by which DC
    multiplies the trip current.
    Assumption: DC shifts AC and half-wave operation alike.
    """
    if waveform == Waveform.SMOOTH_DC:
        return unit.smooth
    if waveform in HALF_WAVES:
        return unit.own * unit.half_wave * CUTS[waveform] * dc_shift
    return unit.own * dc_shift


def real_waveform(attempt: Attempt, handling: Handling) -> str:
    """Return the waveform that really flowed, where the setting was swapped against the note."""
    swapped = handling.ramp_swapped if attempt.is_ramp else handling.times_swapped
    if not swapped or attempt.waveform == Waveform.SMOOTH_DC:
        return attempt.waveform
    return Waveform.AC.value if attempt.on_half_wave else Waveform.HALF_WAVE.value
