"""A test plan on an earth electrode: what each test current puts on metal parts meanwhile."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from checkers.domain.device.readings import Waveform
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Figure
from checkers.judgement.electrode.electrode import Electrode, touch_voltage
from checkers.judgement.limits.safe_rounding import rounded_up
from checkers.judgement.plan.steps import Step

REFUSED = "An instrument that refuses it for that reason has not failed the device."
NOTED = "That it was left out, and why."


@dataclass(frozen=True, slots=True)
class OnElectrode:
    """The resistance that test currents flow through [ohm], and the voltages that may stay [V]."""

    resistance: float
    ac_limit: float | None
    dc_limit: float | None

    def placed(self, step: Step) -> Step:
        """Return a step with the voltage it makes; one that makes too much is to be left out."""
        if step.current is None:
            return step
        volts = touch_voltage(self.resistance, step.current.value)
        limit = self.dc_limit if step.waveform == Waveform.SMOOTH_DC else self.ac_limit
        shown = replace(step, touch_voltage=Figure(rounded_up(volts), "V"))
        return shown if limit is not None and volts <= limit else self._left_out(shown, limit)

    def _left_out(self, step: Step, limit: float | None) -> Step:
        drives = (
            f"{format_quantity(step.current.value if step.current else 0.0, 'mA')} through "
            f"{format_quantity(self.resistance, 'ohm')} puts "
            f"{format_quantity(step.touch_voltage.value if step.touch_voltage else 0.0, 'V')} on "
            "metal parts"
        )
        if limit is None:
            return replace(step, do=f"{step.do} {drives}: no limit is known for it here.")
        over = f"{drives}, above {format_quantity(limit, 'V')}."
        return replace(step, do=f"Leave it out: {over} {REFUSED}", write_down=NOTED)


def on_electrode(steps: Sequence[Step], electrode: Electrode) -> list[Step]:
    """Return the steps of a plan with what each puts on metal parts, where that is known."""
    if electrode.resistance is None:
        return list(steps)
    placed = OnElectrode(electrode.resistance, electrode.ac_limit, electrode.dc_limit)
    return [placed.placed(step) for step in steps]
