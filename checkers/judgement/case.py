"""One device with its circuit, instrument, code and day: what every judgement is about."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device, DeviceType
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.tables import rows_in

INSTRUMENT_ERRORS = "iec-61557-6/operating-uncertainties"


@dataclass(frozen=True, slots=True)
class Case:
    """What is known when a reading is judged."""

    device: Device
    circuit: Circuit
    instrument: Instrument
    code: Code
    day: date

    @property
    def device_asked(self) -> dict[str, Any]:
        """The device as the limit tables are asked about it; what is not known is left out."""
        device = self.device
        return {
            "form": device.form,
            "type": None if device.type == DeviceType.UNKNOWN else device.type,
            "delay": device.delay_class,
            "set_delay": device.set_delay,
            "rated": device.rated_residual_current,
        }

    @property
    def made_to(self) -> str | None:
        """The product standard the device says it is made to, or None."""
        return self.device.product_standard

    @property
    def only_warns(self) -> bool:
        """Whether the device is a monitor, which does not trip."""
        return not self.device.opens

    def time_uncertainty(self, limit: float) -> float:
        """Return the expanded uncertainty [ms] of a time near a limit [ms]."""
        given = self.instrument.time_uncertainty
        return given if given is not None else limit * self._share("trip-time")

    def current_uncertainty(self, reference: float) -> float:
        """Return the expanded uncertainty [mA] of a current, of a reference current [mA]."""
        given = self.instrument.current_uncertainty
        return given if given is not None else self.usual_current_uncertainty(reference)

    def uncertainty_near(self, limit: Limit) -> tuple[float, float]:
        """Return the expanded uncertainty near the least and near the greatest [its unit].

        That of a time is a share of each end, that of a current one of the rating. Raises
        ValueError for a limit of anything else, which needs an uncertainty of its own.
        """
        if limit.unit == "ms":
            ends = (limit.at_least or 0.0, limit.at_most or 0.0)
            return self.time_uncertainty(ends[0]), self.time_uncertainty(ends[1])
        if limit.unit != "mA":
            raise ValueError(limit.unit)
        near = self.current_uncertainty(self.device.rated_residual_current or limit.at_most or 0.0)
        return near, near

    def usual_current_uncertainty(self, reference: float) -> float:
        """Return the expanded uncertainty [mA] of a current by an instrument of the standard.

        It decides which readings contradict each other: a worse instrument must not make
        readings agree that a better one shows to differ.
        """
        return reference * self._share("operating-current")

    @property
    def leakage(self) -> float | None:
        """The standing leakage [mA] that may have flowed during the test, or None.

        With the loads disconnected it does not flow. However small it is, it adds to the test
        current, so the uncertainty of the instrument does not excuse it.
        """
        flows = self.circuit.loads != "off"
        return (self.circuit.standing_leakage or None) if flows else None

    def _share(self, quantity: str) -> float:
        row = rows_in(INSTRUMENT_ERRORS, on=self.day, quantity=quantity)[0]
        share = row.at_most()
        assert share is not None  # noqa: S101  # the table gives every share as a figure
        return share
