"""Residual current devices: their types, delays and forms, and what is asked of one."""

from __future__ import annotations

import re
from dataclasses import dataclass

from checkers.domain.device.abilities import Ability, read_abilities
from checkers.domain.errors import quoted
from checkers.domain.inputs.fields import Labelled, choice, choice_or_quantity, quantity, text
from checkers.domain.sources.documents import recognise


class DeviceType(Labelled):
    """What residual currents a device senses."""

    AC = "AC", "AC: alternating only"
    A = "A", "A: and pulsating direct"
    F = "F", "F: and mixed frequencies"
    B = "B", "B: and smooth direct"
    B_PLUS = "B+", "B+: and up to 20 kHz"
    UNKNOWN = "unknown", "not known"


class Form(Labelled):
    """How a device is built, which decides the product standard it is held to."""

    RCCB = "rccb", "RCCB (without overcurrent protection)"
    RCBO = "rcbo", "RCBO (with overcurrent protection)"
    SOCKET = "socket", "Socket-outlet with RCD"
    PORTABLE = "portable", "Portable RCD"
    MODULAR = "modular", "Sensor, relay and tripping breaker apart"
    CBR = "cbr", "Circuit-breaker with residual current unit"
    GFCI = "gfci", "GFCI (North America, class A)"
    RDC_DD = "rdc-dd", "6 mA DC detection in a charge point"
    MONITOR = "monitor", "Monitor (warns, does not trip)"


ABILITIES = read_abilities(form.value for form in Form)
DELAYS = (
    ("none", "none (general)"),
    ("G", "G: about 10 ms"),
    ("S", "S: selective"),
)
RATINGS = ("10 mA", "30 mA", "100 mA", "300 mA", "500 mA", "1 A")
QUARTER_AMPERE = re.compile(r"[,;+ ]*\b(0[.,]25 ?a|250 ?ma)\b", re.IGNORECASE)
SENSES_SMOOTH_DC = frozenset({DeviceType.B, DeviceType.B_PLUS})
SENSES_HALF_WAVES = SENSES_SMOOTH_DC | {DeviceType.A, DeviceType.F}


@dataclass(frozen=True, slots=True)
class Device:
    """One residual current device, as far as it is known."""

    type: str = choice(
        DeviceType, "Type", default=DeviceType.UNKNOWN, explain="The symbol printed on the device."
    )
    rated_residual_current: float | None = quantity(
        "rated_residual_current", default=None, suggestions=RATINGS
    )
    delay: str | float = choice_or_quantity(
        DELAYS, "delay", "Delay", default="none", explain="G or S as printed, or the set delay."
    )
    form: str = choice(Form, "Form", default=Form.RCCB)
    made_to: str = text(
        "Made to",
        most=80,
        advanced=True,
        explain="The product standard printed on it, where an older one may apply. "
        "Add 0.25 A where its maker declares the 40 ms at 250 mA.",
    )

    @property
    def delay_class(self) -> str:
        """The delay as the limit tables name it: none, G, S, or set."""
        return self.delay if isinstance(self.delay, str) else "set"

    @property
    def set_delay(self) -> float | None:
        """The set delay of an adjustable device [ms], or None."""
        return None if isinstance(self.delay, str) else self.delay

    @property
    def product_standard(self) -> str | None:
        """The key of the document the device says it is made to, or None."""
        return recognise(self._standard_named) if self._standard_named else None

    @property
    def quarter_ampere(self) -> bool:
        """Whether its maker declares the shortest time at 0.25 A and not at five times."""
        return QUARTER_AMPERE.search(self.made_to) is not None

    @property
    def _standard_named(self) -> str:
        return QUARTER_AMPERE.sub("", self.made_to).strip(" ,;+")

    @property
    def opens(self) -> bool:
        """Whether a device of this form interrupts its circuit by itself."""
        return self.has(Ability.OPENS)

    @property
    def protects(self) -> bool:
        """Whether a device of this form may stand alone as the one that disconnects."""
        return self.has(Ability.PROTECTS)

    @property
    def detects_dc(self) -> bool:
        """Whether it is 6 mA detection of smooth DC, which helps an RCD."""
        return self.has(Ability.DETECTS_DC)

    @property
    def senses_smooth_dc(self) -> bool:
        """Whether the type is built to see smooth DC residual current."""
        return self.type in SENSES_SMOOTH_DC

    def has(self, ability: Ability) -> bool:
        """Tell whether devices of this form have an ability."""
        return ability in ABILITIES[self.form]

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        unknown = self._standard_named and self.product_standard is None
        return {"made_to": f"{quoted(self.made_to)} is no standard known here"} if unknown else {}
