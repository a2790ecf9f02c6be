"""One test as it was noted: what was done, at which current, where, and what could be shown."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.device.readings import HALF_WAVES, Test, Waveform


@dataclass(frozen=True, slots=True)
class Attempt:
    """One test of a device marked `rated` [mA].

    `loads` and `place` are as in placed_readings. `current` [mA r.m.s.] is the set test
    current; for a ramp, its end. `window` [ms] is how long the instrument waits. `start`
    is the start phase or polarity, or empty. `first` holds where nothing had tried the
    mechanism before: a try that did not open it may still have loosened it.
    `time_uncertainty` [ms] and `current_uncertainty` [mA] are the instrument's standard
    uncertainties; a time without one scatters as the model's figures say.
    """

    test: str
    rated: float
    current: float
    waveform: str = Waveform.AC.value
    start: str = ""
    loads: str = "unknown"
    place: str = "unknown"
    first: bool = False
    window: float = 300.0
    current_uncertainty: float = 0.0
    time_uncertainty: float | None = None

    @property
    def is_ramp(self) -> bool:
        """Whether the current rises until the device trips."""
        return self.test == Test.RAMP

    @property
    def is_button(self) -> bool:
        """Whether the device's own button is pressed."""
        return self.test == Test.BUTTON

    @property
    def tries_the_mechanism(self) -> bool:
        """Whether a sound device would operate: what sticks is loosened, or shown."""
        return self.is_ramp or self.is_button or self.current >= self.rated

    @property
    def on_half_wave(self) -> bool:
        """Whether a half wave was noted."""
        return self.waveform in HALF_WAVES
