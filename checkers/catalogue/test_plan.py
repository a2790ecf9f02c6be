"""Which tests, currents, waveforms and limits apply to this device here, in which order?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.inputs.fields import group, quantity
from checkers.domain.question import Question
from checkers.domain.verdicts import Outcome, Result
from checkers.judgement.case import Case
from checkers.judgement.electrode.electrode import Electrode
from checkers.judgement.electrode.line_voltage import usual_line_voltage
from checkers.judgement.plan.gaps import gaps
from checkers.judgement.plan.on_electrode import on_electrode
from checkers.judgement.plan.steps import steps_of
from checkers.wording.book import part


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """The device to be tested, and the electrode that its test current flows through."""

    device: Device = group(Device, "Device", default=Device)
    electrode_resistance: float | None = quantity(
        "electrode_resistance",
        default=None,
        explain="In a TT system: each test current times it is a voltage on metal parts.",
    )
    touch_voltage_limit: float | None = quantity(
        "touch_voltage_limit",
        default=None,
        suggestions=("50 V", "25 V"),
        explain="50 V if left out; 25 V in special places where the local code says so.",
        advanced=True,
    )

    @property
    def case(self) -> Case:
        """The device under its code, with loads off and an instrument not known."""
        return Case(self.device, Circuit(loads="off"), Instrument(), self.local_code, self.day)

    @property
    def electrode(self) -> Electrode:
        """The electrode of a TT system, if its resistance is given."""
        return Electrode(
            case=self.case,
            resistance=self.electrode_resistance,
            stated_uncertainty=None,
            system="tt",
            circuit="final",
            line_voltage=usual_line_voltage(self.code),
            wanted_limit=self.touch_voltage_limit,
            in_the_cold=False,
        )


def check(inputs: Inputs) -> Result:
    """List the steps of testing a device, each with its current, its limit and its reason.

    Inputs: a device, a code and a day; the resistance of an electrode [ohm], if there is one.
    Result: in `answer` the `steps`, in order, and how often the code asks for tests again;
    the findings say what the plan leaves open. Nothing is judged.
    """
    case = inputs.case
    steps = on_electrode(steps_of(case), inputs.electrode)
    found = gaps(case, steps)
    first = [one.do_next for one in found if one.do_next]
    return Result(
        findings=found,
        answer={
            **({"find_out_first": first} if first else {}),
            "steps": [one.told for one in steps],
            **_again(case),
        },
        cautions=(part("plan.high-current"), *case.code.not_known),
    )


def _again(case: Case) -> dict[str, Any]:
    """Return how often the code asks for the button and the timed test."""
    rules = case.code.intervals_on(case.day)
    told = [
        part(
            "plan.again",
            test=rule.test,
            every=rule.every,
            place=rule.place,
            device=rule.device,
            source=rule.citation.words,
        )
        for rule in rules
    ]
    return {"again": told} if told else {}


def _example(title: str, code: str, **device: Any) -> Example:
    request = {"code": code, "on": "2026-11-24", "device": device}
    return Example(title, request, Outcome.CANNOT_SAY)


def _on_electrode() -> Example:
    device = {"type": "A", "rated_residual_current": "30 mA"}
    request = {
        "code": "gb",
        "on": "2026-11-24",
        "device": device,
        "electrode_resistance": "900 ohm",
    }
    return Example("On an electrode of 900 ohm", request, Outcome.CANNOT_SAY)


CHECKER = Checker(
    slug="test-plan",
    title="Test plan",
    question="Which tests, currents, waveforms and limits apply to this device here, "
    "in which order, loads on or off?",
    inputs=Inputs,
    check=check,
    examples=(
        _example("A 30 mA type A device", "gb", type="A", rated_residual_current="30 mA"),
        _example("A 30 mA type B device", "de", type="B", rated_residual_current="30 mA"),
        _example(
            "A 300 mA type A device, selective",
            "iec",
            type="A",
            rated_residual_current="300 mA",
            delay="S",
        ),
        _example("6 mA DC detection in a charge point", "gb", form="rdc-dd"),
        _on_electrode(),
        _example("A device whose rating cannot be read", "iec", type="A"),
    ),
)
