"""Which tests, currents, waveforms and limits apply to this device here, in which order?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.devices import Device
from checkers.domain.fields import group
from checkers.domain.question import Question
from checkers.domain.readings import Circuit, Instrument
from checkers.domain.verdicts import Outcome, Result
from checkers.judgement.case import Case
from checkers.judgement.plan_gaps import gaps
from checkers.judgement.plan_steps import steps_of

HIGH_CURRENT = (
    "Tests at several times the rating put a real fault current to earth: with a poor earth "
    "connection use an instrument that stops at the touch voltage limit."
)
INTERVAL = "{test} again every {every}: {place}, {device} devices ({source})."


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """The device to be tested."""

    device: Device = group(Device, "Device", default=Device)

    @property
    def case(self) -> Case:
        """The device under its code, with loads off and an instrument not known."""
        return Case(self.device, Circuit(loads="off"), Instrument(), self.local_code, self.day)


def check(inputs: Inputs) -> Result:
    """List the steps of testing a device, each with its current, its limit and its reason.

    Inputs: a device, a code and a day.
    Result: in `answer` the `steps`, in order, and how often the code asks for tests again;
    the findings say what the plan leaves open. Nothing is judged.
    """
    case = inputs.case
    steps = steps_of(case)
    found = gaps(case, steps)
    first = [one.do_next for one in found if one.do_next]
    return Result(
        findings=found,
        answer={
            **({"find_out_first": first} if first else {}),
            "steps": steps,
            **_again(case),
        },
        cautions=(HIGH_CURRENT, *case.code.not_known),
    )


def _again(case: Case) -> dict[str, Any]:
    """Return how often the code asks for the button and the timed test."""
    rules = case.code.intervals_on(case.day)
    told = [
        INTERVAL.format(
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
        _example("A device whose rating cannot be read", "iec", type="A"),
    ),
)
