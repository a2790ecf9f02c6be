"""Do these readings of one device meet the limits that apply here, on that day?"""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.readings import FOLDED, Circuit, Instrument, Reading
from checkers.domain.inputs.fields import group, many
from checkers.domain.question import Question
from checkers.domain.verdicts import Outcome, Result
from checkers.judgement.case import Case
from checkers.judgement.dc.fitness import nothing_said_of_dc
from checkers.judgement.device.dc_tests import not_tested_with_dc
from checkers.judgement.device.still_to_test import next_test, still_to_do
from checkers.judgement.device.whole_verdict import judge_whole


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A device and its readings, with what is known of circuit and instrument."""

    device: Device = group(Device, "Device", default=Device)
    readings: tuple[Reading, ...] = many(
        Reading, "Readings", each="Reading", least=1, most=100, folded=FOLDED
    )
    circuit: Circuit = group(Circuit, "Circuit", default=Circuit)
    instrument: Instrument = group(Instrument, "Instrument", default=Instrument, advanced=True)

    @property
    def case(self) -> Case:
        """What the judgement is about, beside the readings."""
        return Case(self.device, self.circuit, self.instrument, self.local_code, self.day)


def check(inputs: Inputs) -> Result:
    """Judge every reading, what contradicts, and fitness for DC.

    Inputs: a device, its readings, circuit and instrument.
    Result: a finding for each reading and rule; the worst is the outcome. What the
    code still requires is still to do, and the first of it the next test.
    """
    case = inputs.case
    said_nothing = () if inputs.circuit.dc_residual is not None else (nothing_said_of_dc(),)
    missing = still_to_do(inputs.readings, case)
    return Result(
        findings=judge_whole(inputs.readings, case),
        next_test=next_test(missing),
        still_to_do=missing,
        cautions=(*said_nothing, *not_tested_with_dc(inputs.readings, case)),
    )


SOUND = Example(
    title="A 30 mA type A device in good order",
    request={
        "code": "gb",
        "on": "2026-11-24",
        "device": {"type": "A", "rated_residual_current": "30 mA", "form": "rcbo"},
        "readings": [
            {"test": "no-trip", "multiple": "1/2", "waveform": "ac", "value": "> 1999 ms"},
            {"test": "trip-time", "multiple": 1, "waveform": "ac", "phase": "0", "value": "28 ms"},
            {"test": "ramp", "waveform": "ac", "value": "22 mA"},
            {"test": "button", "value": "operates"},
        ],
        "circuit": {"loads": "off"},
    },
    outcome=Outcome.PASS,
)
BLINDED = Example(
    title="A 30 mA type AC device with smooth DC through it",
    request={
        "code": "gb",
        "on": "2026-11-24",
        "device": {"type": "AC", "rated_residual_current": "30 mA"},
        "readings": [
            {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "> 300 ms"},
            {"test": "ramp", "waveform": "ac", "value": "no trip by 30 mA"},
            {"test": "button", "value": "operates"},
        ],
        "circuit": {"dc_residual": "50 mA"},
    },
    outcome=Outcome.FAIL,
)
UNTOLD = Example(
    title="A time without its multiple",
    request={
        "device": {"type": "A", "rated_residual_current": "30 mA"},
        "readings": [{"test": "trip-time", "waveform": "ac", "value": "33 ms"}],
    },
    outcome=Outcome.CANNOT_SAY,
)
CLOSE = Example(
    title="Half a millisecond over, inside the instrument's uncertainty",
    request={
        "code": "gb",
        "on": "2020-06-01",
        "device": {"type": "AC", "rated_residual_current": "30 mA", "form": "rcbo"},
        "readings": [
            {"test": "trip-time", "multiple": 5, "waveform": "ac", "value": "40.4 ms"},
        ],
    },
    outcome=Outcome.BORDERLINE,
)

CHECKER = Checker(
    slug="readings",
    title="Judge readings",
    question="Do these readings of one device meet the limits that apply here, on that day?",
    inputs=Inputs,
    check=check,
    examples=(SOUND, BLINDED, UNTOLD, CLOSE),
)
