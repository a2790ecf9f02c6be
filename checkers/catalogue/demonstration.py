"""Which resistor, turns and supply inject this DC for a safe demonstration?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.inputs.fields import group, quantity, whole_number
from checkers.domain.question import Question
from checkers.domain.verdicts import Figure, Finding, Outcome, Result, worst
from checkers.judgement.case import Case
from checkers.judgement.dc.bias_case import DcBiasCase
from checkers.judgement.dc.demonstration import judge_set_up, judge_what_is_seen, supply_is_safe
from checkers.judgement.dc.demonstration_steps import expected_readings, steps
from checkers.physics.core.injection import Injection
from checkers.wording.book import part

MOST_TURNS = 100  # more would load the core as a second winding, and change what is to be seen


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """The DC wanted in the core and the source; a device, if its readings are to be foretold."""

    dc_wanted: float = quantity(
        "dc_residual",
        "DC wanted in the core",
        explain="As residual current: turns times the current in the wire.",
    )
    supply_voltage: float = quantity("supply_voltage")
    turns: int = whole_number(
        "Turns through the core",
        least=1,
        most=MOST_TURNS,
        default=1,
        left_out="one",
        explain="How often the DC wire passes through the core, each time the same way.",
    )
    device: Device = group(Device, "Device", default=Device)
    own_trip_current: float | None = quantity(
        "trip_current", "Trip current without DC", default=None
    )

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        return {} if self.dc_wanted > 0.0 else {"dc_wanted": "must be above 0 mA"}

    @property
    def injection(self) -> Injection:
        """The set-up asked about."""
        return Injection(self.supply_voltage, self.turns, self.dc_wanted)

    @property
    def asked(self) -> DcBiasCase:
        """The device with the DC that the standard value of the resistor really gives."""
        dc = self.injection.dc_residual
        circuit = Circuit(loads="off", dc_residual=dc)
        case = Case(self.device, circuit, Instrument(), self.local_code, self.day)
        return DcBiasCase(case, dc, self.own_trip_current)


def check(inputs: Inputs) -> Result:
    """Work out the resistor, judge source and resistor, and foretell the readings.

    Inputs: the DC wanted, the source's voltage, the turns, and a device.
    Result: the resistor [ohm, W], what it really gives [mA], the steps in order and the readings
    to expect. A source above the limit gets no resistor, an unsafe resistor no steps.
    """
    injection = inputs.injection
    findings = judge_set_up(injection)
    if not supply_is_safe(injection):
        return Result(findings=findings)
    asked = inputs.asked
    answer = _answer(injection)
    safe = worst(one.outcome for one in findings) is Outcome.PASS
    if safe:
        answer |= {"expected_readings": expected_readings(asked), "steps": steps(injection)}
    return Result(
        findings=[*findings, *_seen(inputs, asked)],
        answer=answer,
        cautions=_cautions() if safe else (),
    )


def _cautions() -> tuple[str, ...]:
    return part("dc.button-needs-rated-voltage"), part("dc.rig-is-live")


def _seen(inputs: Inputs, asked: DcBiasCase) -> list[Finding]:
    return [] if inputs.device == Device() else [judge_what_is_seen(asked)]


def _answer(injection: Injection) -> dict[str, Any]:
    low, high = injection.dc_residual_range
    rating = injection.power_rating
    return {
        "resistance": _figure(injection.resistance, "ohm"),
        "standard_value": _figure(injection.standard_value, "ohm"),
        "power": _figure(injection.power, "W"),
        "power_rating": part("dc.no-rating-made") if rating is None else _figure(rating, "W"),
        "current": _figure(injection.current, "mA"),
        "turns": injection.turns,
        "dc_residual": _figure(injection.dc_residual, "mA"),
        "dc_residual_least": _figure(low, "mA"),
        "dc_residual_most": _figure(high, "mA"),
        "current_limit": _figure(injection.current_limit, "mA"),
    }


def _figure(value: float, unit: str) -> Figure:
    return Figure(float(f"{value:.4g}"), unit)


BLINDING = Example(
    title="50 mA in the core of a 30 mA type AC device, from 12 V with ten turns",
    request={
        "dc_wanted": "50 mA",
        "supply_voltage": "12 V",
        "turns": 10,
        "device": {"type": "AC", "rated_residual_current": "30 mA"},
        "own_trip_current": "27 mA",
    },
    outcome=Outcome.PASS,
)
TOO_LITTLE = Example(
    title="6 mA in the core of a 30 mA type A device: nothing to be seen for certain",
    request={
        "dc_wanted": "6 mA",
        "supply_voltage": "12 V",
        "turns": 1,
        "device": {"type": "A", "rated_residual_current": "30 mA"},
    },
    outcome=Outcome.CANNOT_SAY,
)
TOO_HOT = Example(
    title="250 mA from 24 V with one turn: too hot",
    request={"dc_wanted": "250 mA", "supply_voltage": "24 V", "turns": 1},
    outcome=Outcome.FAIL,
)
MAINS = Example(
    title="A source of 230 V: refused",
    request={"dc_wanted": "50 mA", "supply_voltage": "230 V", "turns": 1},
    outcome=Outcome.FAIL,
)

CHECKER = Checker(
    slug="demonstration",
    title="Demonstration of blinding",
    question="Which resistor, turns and supply inject this DC for a safe demonstration, "
    "and what will be seen?",
    inputs=Inputs,
    check=check,
    examples=(BLINDING, TOO_LITTLE, TOO_HOT, MAINS),
)
