"""What would make a device read like this, how likely is each cause, what tells them apart?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.inspection import Looked
from checkers.domain.device.placed_readings import PlacedReading, SuppliedCircuit
from checkers.domain.device.readings import FOLDED, Instrument
from checkers.domain.inputs.fields import group, many
from checkers.domain.question import Question
from checkers.domain.verdicts import (
    Explanation,
    Figure,
    Finding,
    Outcome,
    Result,
)
from checkers.judgement.case import Case
from checkers.judgement.device.whole_verdict import judge_whole
from checkers.judgement.inference.circuit_evidence import circumstances
from checkers.judgement.inference.explanation import Explained, explain, why_not
from checkers.judgement.inference.findings import (
    danger,
    do_about,
    findings_of,
    not_explained,
    not_weighed,
)
from checkers.judgement.inference.next_step.most_telling import next_test
from checkers.judgement.inference.reasons import reasons_for
from checkers.judgement.inference.standing import standing_of
from checkers.judgement.inference.weighing.hypotheses import REST, hypothesis
from checkers.judgement.inference.weighing.posterior import Weighed
from checkers.wording.book import part

SMALL_CHANCE = 0.05  # from here on a dangerous cause is named before anything else
SHOWN = 0.01  # causes less likely than this are listed together


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
    most. Every finding is cannot-say: causes are no verdict. What `readings` fails is
    named first, and no cause calls it in order.
    """
    case = inputs.case
    problem = why_not(case)
    if problem:
        return _only_judged(inputs, problem)
    explained = explain(inputs.readings, case, inputs.circuit.supply, inputs.looked.found)
    return Result(
        findings=findings_of(explained, SMALL_CHANCE),
        answer=_answer(explained),
        explanations=explanations_of(explained, case),
        next_test=next_test(
            case, explained.evidence, explained.causes, settled=not explained.standing.fails
        ),
        cautions=_cautions(danger(explained.causes, SMALL_CHANCE, explained.standing)),
    )


def _only_judged(inputs: Inputs, problem: str) -> Result:
    """Return that no cause can be weighed, and the danger where the readings fail."""
    standing = standing_of(judge_whole(inputs.readings, inputs.case))
    found = danger((), SMALL_CHANCE, standing)
    return Result(findings=[*found, not_weighed(problem)], cautions=_cautions(found))


def _cautions(found: Sequence[Finding]) -> tuple[str, ...]:
    return (part("inference.not-ruled-out"),) if found else ()


def explanations_of(explained: Explained, case: Case) -> list[Explanation]:
    """Return the causes that are likely enough to be listed, with their reasons, in words.

    Inputs: what was explained; the case. The rest stand together in the last line, so that
    all that is listed sums to 1.
    """
    shown = [one for one in explained.causes if one.probability >= SHOWN]
    listed = [_explanation(one, explained, case) for one in shown]
    rest = round(1.0 - sum(one.probability for one in listed), 4)
    if rest > 0.0:
        return [*listed, Explanation(REST, part("inference.other-causes"), rest)]
    first = replace(listed[0], probability=round(listed[0].probability + rest, 4))
    return [first, *listed[1:]]


def _explanation(weighed: Weighed, explained: Explained, case: Case) -> Explanation:
    speaks_for, against = reasons_for(weighed, explained.causes, explained.evidence)
    around = circumstances(weighed.code, explained.evidence.known, case)
    return Explanation(
        code=weighed.code,
        name=hypothesis(weighed.code).name,
        probability=round(weighed.probability, 4),
        speaks_for=(*around, *speaks_for),
        speaks_against=against,
        do_next=do_about(weighed.code, explained.standing),
    )


def _answer(explained: Explained) -> dict[str, object]:
    first = explained.causes[0]
    dangerous = sum(one.probability for one in explained.causes if hypothesis(one.code).danger)
    leading: tuple[str, object] = (
        hypothesis(first.code).name,
        Figure(round(100.0 * first.probability, 1), "%"),
    )
    if not_explained(explained):
        leading = part("inference.not-explained"), part("inference.chance-not-known")
    return {
        "leading_cause": leading[0],
        "chance": leading[1],
        "dangerous_together": Figure(round(100.0 * dangerous, 1), "%"),
    }


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
