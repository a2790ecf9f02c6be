"""What would make a device read like this, how likely is each cause, what tells them apart?"""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.causes import CAUSES
from checkers.domain.checker import Checker, Example
from checkers.domain.devices import Device
from checkers.domain.fields import group, many
from checkers.domain.looked import Looked
from checkers.domain.placed_readings import PlacedReading, SuppliedCircuit
from checkers.domain.question import Question
from checkers.domain.readings import FOLDED, Instrument
from checkers.domain.verdicts import (
    Explanation,
    Figure,
    Finding,
    Judges,
    Outcome,
    Result,
)
from checkers.judgement.case import Case
from checkers.judgement.inference.circumstances import circumstances
from checkers.judgement.inference.explaining import Explained, explain, why_not
from checkers.judgement.inference.findings import CAUSE, danger, findings_of
from checkers.judgement.inference.next_test import next_test
from checkers.judgement.inference.posterior import Weighed
from checkers.judgement.inference.reasons import reasons_for

SMALL_CHANCE = 0.05  # from here on a dangerous cause is named before anything else
SHOWN = 0.01  # causes less likely than this are not listed
UNPROTECTED = (
    "A cause that leaves people without protection is not ruled out: treat the circuit as "
    "unprotected until it is settled."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A device and its readings in the order in which they were taken, circuit and instrument."""

    device: Device = group(Device, "Device", default=Device)
    readings: tuple[PlacedReading, ...] = many(
        PlacedReading, "Readings", each="Reading", least=1, most=40, folded=FOLDED
    )
    circuit: SuppliedCircuit = group(SuppliedCircuit, "Circuit", default=SuppliedCircuit)
    looked: Looked = group(Looked, "Looked at", default=Looked, advanced=True)
    instrument: Instrument = group(Instrument, "Instrument", default=Instrument, advanced=True)

    @property
    def case(self) -> Case:
        """What the readings are of."""
        return Case(self.device, self.circuit, self.instrument, self.local_code, self.day)


def check(inputs: Inputs) -> Result:
    """Weigh every cause that could be behind the readings.

    Inputs: a device, its readings in their order, circuit and instrument.
    Result: causes with probabilities, reasons and actions; the test that would tell
    most. Every finding is cannot-say: causes are no verdict.
    """
    case = inputs.case
    problem = why_not(case)
    if problem:
        return Result(findings=[_nothing_to_say(problem)])
    explained = explain(inputs.readings, case, inputs.circuit.supply, inputs.looked.found)
    return Result(
        findings=findings_of(explained, SMALL_CHANCE),
        answer=_answer(explained),
        explanations=explanations_of(explained),
        next_test=next_test(case, explained.evidence, explained.causes),
        cautions=(UNPROTECTED,) if danger(explained.causes, SMALL_CHANCE) else (),
    )


def explanations_of(explained: Explained) -> list[Explanation]:
    """Return the causes that are likely enough to be listed, with their reasons, in words."""
    shown = (one for one in explained.causes if one.probability >= SHOWN)
    return [_explanation(one, explained) for one in shown]


def _explanation(weighed: Weighed, explained: Explained) -> Explanation:
    cause = CAUSES[weighed.code]
    speaks_for, against = reasons_for(weighed, explained.causes, explained.evidence)
    around = circumstances(weighed.code, explained.evidence.known)
    return Explanation(
        code=cause.code,
        name=cause.name,
        probability=round(weighed.probability, 4),
        speaks_for=(*around, *speaks_for),
        speaks_against=against,
        do_next=cause.do_next,
    )


def _answer(explained: Explained) -> dict[str, object]:
    first = explained.causes[0]
    dangerous = sum(one.probability for one in explained.causes if CAUSES[one.code].danger)
    return {
        "leading_cause": CAUSES[first.code].name,
        "chance": Figure(round(100.0 * first.probability, 1), "%"),
        "dangerous_together": Figure(round(100.0 * dangerous, 1), "%"),
    }


def _nothing_to_say(problem: str) -> Finding:
    return Finding(
        about=CAUSE,
        outcome=Outcome.CANNOT_SAY,
        says=problem,
        judges=Judges.FUNCTION,
        do_next="Read rating and type on the device.",
    )


HUNDRED = Example(
    title="Passes at five times, fails at one times, ramps at 75 mA",
    request={
        "code": "gb",
        "on": "2026-11-24",
        "device": {"type": "A", "rated_residual_current": "30 mA"},
        "readings": [
            {"test": "trip-time", "multiple": 5, "waveform": "ac", "value": "16.9 ms"},
            {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "> 300 ms"},
            {"test": "ramp", "waveform": "ac", "value": "75 mA"},
        ],
    },
    outcome=Outcome.CANNOT_SAY,
)
BLINDED = Example(
    title="No trip at the rating, the button works, and 50 mA of smooth DC flows",
    request={
        "code": "gb",
        "on": "2026-11-24",
        "device": {"type": "AC", "rated_residual_current": "30 mA"},
        "readings": [
            {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "> 300 ms"},
            {"test": "ramp", "waveform": "ac", "value": "no trip by 30 mA"},
            {"test": "button", "value": "operates"},
        ],
        "circuit": {"loads": "on", "dc_residual": "50 mA"},
    },
    outcome=Outcome.CANNOT_SAY,
)
LIT = Example(
    title="Slower at five times than at one, with a fitting connected",
    request={
        "device": {"rated_residual_current": "30 mA", "form": "rcbo"},
        "readings": [
            {"test": "trip-time", "multiple": 1, "waveform": "ac", "phase": "0", "value": "28.5"},
            {"test": "trip-time", "multiple": 1, "waveform": "ac", "phase": "180", "value": "18"},
            {"test": "trip-time", "multiple": 5, "waveform": "ac", "phase": "0", "value": "40.4"},
            {"test": "trip-time", "multiple": 5, "waveform": "ac", "phase": "180", "value": "18.3"},
        ],
        "circuit": {"loads": "on"},
    },
    outcome=Outcome.CANNOT_SAY,
)
ARTEFACT = Example(
    title="The timer ran on, but the device was seen to open",
    request={
        "device": {"type": "A", "rated_residual_current": "30 mA", "form": "rcbo"},
        "readings": [
            {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "16 ms"},
            {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "> 300 ms"},
        ],
        "circuit": {"seen_to_open": True},
    },
    outcome=Outcome.CANNOT_SAY,
)

CHECKER = Checker(
    slug="explain",
    title="Explain readings",
    question="What would make a device read like this, how likely is each cause, "
    "and which test tells them apart?",
    inputs=Inputs,
    check=check,
    examples=(HUNDRED, BLINDED, LIT, ARTEFACT),
)
