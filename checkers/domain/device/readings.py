"""Readings of one device: which test, at which level, and what the instrument showed."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.inputs.fields import (
    Folded,
    Labelled,
    Start,
    choice,
    multiple,
    quantity,
    text,
    yes_no,
)
from checkers.domain.quantities.measured_value import Measured, Said, parse_measured
from checkers.domain.quantities.typed_numbers import NotAQuantity


class Test(Labelled):
    """What was done to the device."""

    TRIP_TIME = "trip-time", "Trip time"
    NO_TRIP = "no-trip", "No-trip test"
    RAMP = "ramp", "Ramp: trip current"
    BUTTON = "button", "Test button"
    UNKNOWN = "unknown", "not known"


class Waveform(Labelled):
    """The shape of the test current."""

    AC = "ac", "AC (sine)"
    HALF_WAVE = "half-wave", "Half wave, 0°"
    HALF_WAVE_90 = "half-wave-90", "Half wave cut at 90°"
    HALF_WAVE_135 = "half-wave-135", "Half wave cut at 135°"
    SMOOTH_DC = "smooth-dc", "Smooth DC"
    UNKNOWN = "unknown", "not known"


PHASES = (("0", "0°"), ("180", "180°"), ("+", "+ (DC)"), ("-", "− (DC)"))
EXPECTED: dict[str, str] = {
    Test.TRIP_TIME: "trip_time",
    Test.NO_TRIP: "trip_time",
    Test.RAMP: "trip_current",
}
HALF_WAVES = frozenset({Waveform.HALF_WAVE, Waveform.HALF_WAVE_90, Waveform.HALF_WAVE_135})
SHOWN_IN_WORDS = ("> ", "no trip", "operates", "does not operate")
USUAL_TESTS = (
    Start("×½ holds", {"test": Test.NO_TRIP, "multiple": "1/2", "waveform": Waveform.AC}),
    *(
        Start(
            f"×{multiple} {phase}°",
            {"test": Test.TRIP_TIME, "multiple": multiple}
            | {"waveform": Waveform.AC, "phase": phase},
        )
        for multiple in ("1", "5")
        for phase in ("0", "180")
    ),
    Start("Ramp", {"test": Test.RAMP, "waveform": Waveform.AC}),
    Start("Button", {"test": Test.BUTTON}),
)
FOLDED = Folded(lead="value", ask="Which test?", starts=USUAL_TESTS)


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading as it was written down."""

    value: str = text(
        "Reading",
        default="",
        most=80,
        explain="As the instrument showed it.",
        keypad=True,
        suggestions=SHOWN_IN_WORDS,
    )
    test: str = choice(Test, "Test", default=Test.UNKNOWN)
    multiple: float | None = multiple("Multiple of IΔn", default=None)
    current: float | None = quantity("residual_current", "or current set", default=None)
    waveform: str = choice(Waveform, "Waveform", default=Waveform.UNKNOWN)
    phase: str = choice(PHASES, "Start", default="")

    @property
    def measured(self) -> Measured:
        """What was written down, parsed for this kind of test."""
        return parse_measured(self.value, EXPECTED.get(self.test, "trip_time"))

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        if not self.value:
            return {"value": "is needed"}
        if self.multiple is not None and self.current is not None:
            return {"current": "give the multiple or the current set, not both"}
        try:
            measured = self.measured
        except NotAQuantity as bad:
            return {"value": str(bad)}
        return self._problem_with_button(measured)

    def _problem_with_button(self, measured: Measured) -> dict[str, str]:
        if self.test == Test.BUTTON and measured.said in (Said.FIGURE, Said.LESS_THAN):
            return {"value": "a test button gives no figure: write operates or does not operate"}
        return {}


@dataclass(frozen=True, slots=True)
class Circuit:
    """The circuit during the test, as far as it is known."""

    loads: str = choice(
        (("off", "disconnected"), ("on", "connected"), ("unknown", "not known")),
        "Loads",
        default="unknown",
    )
    dc_residual: float | None = quantity("dc_residual", default=None)
    standing_leakage: float | None = quantity("standing_leakage", default=None)
    seen_to_open: bool | None = yes_no(
        "Seen to open", explain="Whether the device opened, whatever the instrument showed."
    )
    system: str = choice(
        (("tn", "TN"), ("tt", "TT"), ("unknown", "not known")),
        "Earthing system",
        default="unknown",
        advanced=True,
        explain="Decides how long a fault may last, and how much a neutral-to-earth link below the "
        "device takes away.",
    )
    electrode_resistance: float | None = quantity(
        "electrode_resistance",
        default=None,
        advanced=True,
        explain="In a TT system: tells the current of a fault, at which the time counts.",
    )


@dataclass(frozen=True, slots=True)
class Instrument:
    """The instrument's expanded uncertainties (coverage factor 2), where they are known."""

    time_uncertainty: float | None = quantity(
        "time_uncertainty", default=None, left_out="10 % of the limit"
    )
    current_uncertainty: float | None = quantity(
        "current_uncertainty", default=None, left_out="10 % of the rating"
    )
