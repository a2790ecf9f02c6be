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
from checkers.wording.book import part


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
        facts = {
            "current": _shown(step.current),
            "resistance": format_quantity(self.resistance, "ohm"),
            "voltage": _shown(step.touch_voltage),
        }
        if limit is None:
            return replace(step, do=part("plan.no-touch-limit", do=step.do, **facts))
        do = part("plan.leave-out", limit=format_quantity(limit, "V"), **facts)
        return replace(step, do=do, write_down=part("plan.write-down-left-out"))


def _shown(figure: Figure | None) -> str:
    return format_quantity(figure.value, figure.unit) if figure else ""


def on_electrode(steps: Sequence[Step], electrode: Electrode) -> list[Step]:
    """Return the steps of a plan with what each puts on metal parts, where that is known."""
    if electrode.resistance is None:
        return list(steps)
    placed = OnElectrode(electrode.resistance, electrode.ac_limit, electrode.dc_limit)
    return [placed.placed(step) for step in steps]
