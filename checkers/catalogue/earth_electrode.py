"""Is this electrode (or loop) good enough for this device, for AC and for DC residual current?"""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.inputs.fields import choice, group, quantity, yes_no
from checkers.domain.question import Question
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.verdicts import Figure, Outcome, Result
from checkers.judgement.case import Case
from checkers.judgement.electrode.disconnection import (
    disconnection_row,
    earth_fault,
    judge_disconnection,
)
from checkers.judgement.electrode.electrode import (
    SPECIAL_PLACE,
    Electrode,
    greatest_resistance,
    touch_voltage,
)
from checkers.judgement.electrode.findings import judge_touch_voltage
from checkers.judgement.electrode.line_voltage import usual_line_voltage
from checkers.judgement.limits.safe_rounding import rounded_down, rounded_up
from checkers.wording.book import part

SYSTEMS = (("tt", "TT: own electrode"), ("tn", "TN: loop through the source's neutral"))
CIRCUITS = (("final", "Final circuit"), ("distribution", "Distribution circuit"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A device, the resistance its faults flow through, and the place it stands in."""

    device: Device = group(Device, "Device", default=Device)
    electrode_resistance: float | None = quantity("electrode_resistance", default=None)
    system: str = choice(SYSTEMS, "Earthing system", default="tt")
    touch_voltage_limit: float | None = quantity(
        "touch_voltage_limit",
        default=None,
        suggestions=("50 V", "25 V"),
        left_out="what the code allows",
        explain="50 V if left out; 25 V in special places where the local code says so. "
        "It can only be stricter than the code.",
    )
    circuit: str = choice(CIRCUITS, "Circuit", default="final", advanced=True)
    line_voltage: float | None = quantity(
        "line_voltage", default=None, advanced=True, left_out="the usual one of the country"
    )
    resistance_uncertainty: float | None = quantity(
        "resistance_uncertainty",
        default=None,
        advanced=True,
        left_out="30 % to pass, 10 % to fail",
    )
    cold: bool | None = yes_no(
        "Stands in the cold", explain="The device may be colder than −5 °C.", advanced=True
    )

    @property
    def electrode(self) -> Electrode:
        """The electrode as the judgement takes it."""
        case = Case(self.device, Circuit(), Instrument(), self.local_code, self.day)
        return Electrode(
            case=case,
            resistance=self.electrode_resistance,
            stated_uncertainty=self.resistance_uncertainty,
            system=self.system,
            circuit=self.circuit,
            line_voltage=self.line_voltage or usual_line_voltage(self.code),
            wanted_limit=self.touch_voltage_limit,
            in_the_cold=bool(self.cold),
        )


def check(inputs: Inputs) -> Result:
    """Judge touch voltage and disconnection time, for AC and where sensed for smooth DC.

    Inputs: a device, a resistance [ohm], the system and the touch voltage that may stay [V].
    Result: findings; in `answer` the touch voltages [V], rounded up, the greatest resistances
    [ohm], rounded down, and the fault current [mA] with the times [ms].
    """
    electrode = inputs.electrode
    return Result(
        findings=[*judge_touch_voltage(electrode), *judge_disconnection(electrode)],
        answer={**_for_ac(electrode), **_for_dc(electrode), **_for_time(electrode)},
        cautions=tuple(_cautions(electrode)),
    )


def _for_ac(electrode: Electrode) -> dict[str, Any]:
    rated, limit = electrode.rated, electrode.ac_limit
    if rated is None or limit is None:
        return {}
    factor = CONSTANTS["operating_factor_in_the_cold"].value
    return {
        **_touch("touch_voltage", electrode, rated),
        "greatest_resistance": _at_most(limit, rated),
        "greatest_resistance_at_25_v": _at_most(min(limit, SPECIAL_PLACE), rated),
        "greatest_resistance_in_the_cold": _at_most(limit, rated * factor),
    }


def _for_dc(electrode: Electrode) -> dict[str, Any]:
    band, dc, ac = electrode.dc_band, electrode.dc_limit, electrode.ac_limit
    if band is None or band.at_most is None or dc is None or ac is None:
        return {}
    return {
        "dc_trip_current": Figure(band.at_most, "mA"),
        "dc_touch_voltage_limit": Figure(dc, "V"),
        **_touch("dc_touch_voltage", electrode, band.at_most),
        "dc_greatest_resistance": _at_most(dc, band.at_most),
        "dc_greatest_resistance_at_ac_limit": _at_most(ac, band.at_most),
    }


def _for_time(electrode: Electrode) -> dict[str, Any]:
    if electrode.resistance is None:
        return {}
    fault = earth_fault(electrode, electrode.resistance)
    if fault is None:
        return {}
    row, time = disconnection_row(electrode), fault.greatest_time
    limit = row.at_most() if row else None
    return {
        "fault_current": Figure(rounded_down(fault.current), "mA"),
        "multiple": Figure(rounded_down(fault.multiple, 3), ""),
        **({"greatest_trip_time": Figure(time, "ms")} if time and isfinite(time) else {}),
        **({"disconnection_time": Figure(limit, "ms")} if limit else {}),
    }


def _touch(name: str, electrode: Electrode, current: float) -> dict[str, Figure]:
    if electrode.resistance is None:
        return {}
    return {name: Figure(rounded_up(touch_voltage(electrode.resistance, current)), "V")}


def _at_most(limit: float, current: float) -> Figure:
    return Figure(rounded_down(greatest_resistance(limit, current)), "ohm")


def _cautions(electrode: Electrode) -> list[str]:
    factor = CONSTANTS["operating_factor_in_the_cold"].value
    cold = not electrode.in_the_cold and _marginal_in_the_cold(electrode, factor)
    loop, alone = electrode.system == "tn", electrode.resistance is not None
    return [
        *([part("electrode.dc-not-judged")] if electrode.dc_band is None else []),
        *([part("electrode.loop-in-tn")] if loop else []),
        *([part("electrode.electrode-alone")] if alone else []),
        *([part("electrode.cold-not-judged", factor=f"{factor:g}")] if cold else []),
    ]


def _marginal_in_the_cold(electrode: Electrode, factor: float) -> bool:
    rated, limit, resistance = electrode.rated, electrode.ac_limit, electrode.resistance
    if rated is None or limit is None or resistance is None:
        return False
    return touch_voltage(resistance, rated * factor) > limit


def _example(title: str, outcome: Outcome, **request: Any) -> Example:
    return Example(title, {"code": "gb", "on": "2026-11-24", **request}, outcome)


CHECKER = Checker(
    slug="earth-electrode",
    title="Earth electrode",
    question="Is this electrode (or loop) good enough for this device, for AC and for DC "
    "residual current?",
    inputs=Inputs,
    check=check,
    examples=(
        _example(
            "A rod of 220 ohm with a 30 mA type B device",
            Outcome.PASS,
            device={"type": "B", "rated_residual_current": "30 mA"},
            electrode_resistance="220 ohm",
        ),
        _example(
            "The same rod with a 300 mA device",
            Outcome.FAIL,
            device={"type": "A", "rated_residual_current": "300 mA", "delay": "S"},
            electrode_resistance="220 ohm",
        ),
        _example(
            "A rod close to the limit",
            Outcome.BORDERLINE,
            device={"type": "A", "rated_residual_current": "100 mA"},
            electrode_resistance="480 ohm",
        ),
        _example(
            "How high may the resistance be for 30 mA?",
            Outcome.CANNOT_SAY,
            device={"type": "A", "rated_residual_current": "30 mA"},
        ),
    ),
)
