"""A fresh device with a hidden condition: read, decide, be marked, be told why."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from typing import Any

from checkers.catalogue import explain, leakage_budget, readings, type_for_load
from checkers.domain.causes import ACTIONS, CAUSES
from checkers.domain.checker import Checker, Example
from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device
from checkers.domain.inputs.fields import choice, group, many, whole_number, yes_no
from checkers.domain.loads.registry import LOADS
from checkers.domain.question import Question
from checkers.domain.verdicts import Explanation, Finding, Outcome, Result
from checkers.judgement.practice.drills import DRILLS, PracticeLevel, Scene
from checkers.judgement.practice.exercise import LAST_SEED, Drawn, draw
from checkers.judgement.practice.hints import hint
from checkers.judgement.practice.marking import DO_NOT_KNOW, Decision, mark, marks
from checkers.judgement.practice.progress import Practised, deciding
from checkers.judgement.practice.test_results import Taken, take
from checkers.judgement.practice.tries import tried
from checkers.judgement.practice.worksheet import SheetAsked, sheet
from checkers.judgement.practice.wrong_settings import without_settings
from checkers.wording.book import part

UNKNOWN = (DO_NOT_KNOW, "I do not know")
OUTCOMES = (
    ("pass", "pass"),
    ("fail", "fail"),
    ("borderline", "borderline"),
    ("cannot-say", "cannot say"),
    UNKNOWN,
)
HINTS = (
    ("limits", "which limits apply"),
    ("test", "what to do next"),
    ("cause", "which causes are still open"),
    ("action", "what the cause means"),
)
MOST_ACTIONS = 20


@dataclass(frozen=True, slots=True)
class Action:
    """One thing the learner does."""

    do: str = choice(tuple((key, one.words) for key, one in DRILLS.things.items()), "Do")


@dataclass(frozen=True, slots=True)
class Decided:
    """What the learner decides, once there is enough to go by."""

    limits: str = choice(OUTCOMES, "The readings", default="")
    cause: str = choice(
        (*((code, one.name) for code, one in CAUSES.items()), UNKNOWN),
        "The cause",
        default="",
    )
    action: str = choice((*ACTIONS.items(), UNKNOWN), "What to do about it", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A seed and a level, what was done so far, and the decision."""

    seed: int = whole_number("Number of the device", least=1, most=LAST_SEED, default=1)
    level: str = choice(
        tuple((str(one.number), f"{one.number}: {one.title}") for one in DRILLS.levels),
        "Level",
        default="1",
    )
    actions: tuple[Action, ...] = many(Action, "What you do", most=MOST_ACTIONS)
    decision: Decided = group(Decided, "Your decision", default=Decided)
    trying: bool | None = yes_no("Mark it without giving the answer away", default=None)
    hint: str = choice(HINTS, "A hint", default="")
    sheet: int = whole_number("Questions on a printed sheet", least=0, most=30, default=0)

    @property
    def chosen_level(self) -> PracticeLevel:
        """The level asked for."""
        return DRILLS.levels[int(self.level) - 1]

    @property
    def drawn(self) -> Drawn:
        """The device asked for."""
        return draw(self.seed, self.chosen_level, self.local_code, self.day, fit_of)

    @property
    def hazards(self) -> frozenset[str]:
        """What the equipment of the place brings with it."""
        return frozenset() if self.sheet else LOADS[self.drawn.scene.load].hazards


def check(inputs: Inputs) -> Result:
    """Show what the chosen tests read, and mark the decision once it is made.

    Inputs: seed and level, which give the device; what was done, in order; the decision,
    whether it is a try, a hint that is asked for.
    Result: in `answer` the scene, the device as noted and what was shown; findings are
    the marks, or the hint. Once the cause is told, what explain makes of all that was done.
    With `sheet`, questions and answers instead. The same request always gives the same
    reply.
    """
    if inputs.sheet:
        return _sheet(inputs)
    level = inputs.chosen_level
    drawn = inputs.drawn
    keys = [*drawn.given, *(one.do for one in inputs.actions)]
    things = [DRILLS.things[key] for key in keys]
    taken = take(things, drawn.possible, drawn.case, drawn.known, drawn.shown_by)
    decided = Decision(inputs.decision.limits, inputs.decision.cause, inputs.decision.action)
    answer = _shown(level, drawn, taken)
    if not (inputs.hint or decided.is_made):
        return _result([_waiting(level)], answer)
    practised = Practised(
        level, drawn, taken, _judge(inputs, drawn, taken), _leaks_too_much(inputs, drawn, taken)
    )
    if inputs.hint:
        return _result([hint(inputs.hint, decided, practised)], answer)
    if inputs.trying:
        return _result(tried(decided, practised), answer)
    return _marked(decided, practised, answer)


def _marked(decided: Decision, practised: Practised, answer: dict[str, Any]) -> Result:
    """Mark everything, and tell the cause where one was named or none is asked for."""
    found = marks(decided, practised)
    right = sum(one.outcome is Outcome.PASS for one in found)
    answer["marks"] = part("practice.marks", right=right, of=len(found))
    asked = "cause" in practised.level.asks
    if decided.cause or not asked:
        answer["cause"] = CAUSES[practised.drawn.cause].name
    told = decided.cause and asked
    listed = explain.explanations_of(practised.explained(), practised.drawn.case) if told else ()
    return _result(found, answer, listed)


def _result(
    found: Sequence[Finding], answer: dict[str, Any], listed: Sequence[Explanation] = ()
) -> Result:
    return Result(
        findings=found, answer=answer, explanations=listed, cautions=(part("practice.invented"),)
    )


@lru_cache(maxsize=512)
def fit_of(scene: Scene, device: Device, code: Code, on: date) -> Finding:
    """Return what decides, for type-for-load, whether a device fits the equipment of a place.

    Assumption: a place has one piece of equipment, and its device feeds nothing else.
    """
    result = type_for_load.check(
        type_for_load.Inputs(
            code=code.key,
            on=on,
            load=scene.load,
            supply=scene.fed,
            separation=scene.separation,
            maker_says=scene.maker_says,
            dc_detection=scene.detection,
            shared=False,
            device=device,
        )
    )
    return deciding(result)


def _leaks_too_much(inputs: Inputs, drawn: Drawn, taken: Sequence[Taken]) -> bool:
    """Tell whether leakage-budget fails what the leakage clamp showed, if it was used."""
    measured = [one.current for one in taken if one.thing.look == "leakage" and one.current]
    return any(
        leakage_budget.check(
            leakage_budget.Inputs(
                code=inputs.code, on=inputs.on, device=drawn.case.device, measured=one
            )
        ).outcome
        is Outcome.FAIL
        for one in measured
    )


def _judge(inputs: Inputs, drawn: Drawn, taken: Sequence[Taken]) -> Result:
    """Return what the readings checker says, with the clamps and what was seen.

    Where the instrument was found set otherwise than noted, no reading of it counts.
    """
    judged = _readings(inputs, drawn, taken)
    settings = [one.strange for one in taken if one.thing.look == "settings"]
    return without_settings(judged) if any(settings) else judged


def _readings(inputs: Inputs, drawn: Drawn, taken: Sequence[Taken]) -> Result:
    listed = tuple(one.reading for one in taken if one.reading is not None)
    currents = {one.thing.look: one.current for one in taken if one.current is not None}
    seen = [one.seen_otherwise for one in taken if one.seen_otherwise is not None]
    on = any(one.loads == "on" for one in listed)
    circuit = replace(
        drawn.case.circuit,
        loads="on" if on else "off",
        dc_residual=currents.get("dc"),
        standing_leakage=currents.get("leakage"),
        seen_to_open=seen[-1] if seen else None,
    )
    return readings.check(
        readings.Inputs(
            code=inputs.code,
            on=inputs.on,
            device=drawn.case.device,
            readings=listed,
            circuit=circuit,
        )
    )


def _shown(level: PracticeLevel, drawn: Drawn, taken: Sequence[Taken]) -> dict[str, Any]:
    return {
        "scene": drawn.scene.words,
        "device": drawn.device_words,
        "task": level.task,
        "readings": [{"done": one.thing.words, "shows": one.shows} for one in taken],
    }


def _waiting(level: PracticeLevel) -> Finding:
    words = [part(f"practice.{one}") for one in ("limits", "cause", "action") if one in level.asks]
    return mark("waiting", Outcome.CANNOT_SAY, {"asked": part("practice.and").join(words)})


def _sheet(inputs: Inputs) -> Result:
    asked = SheetAsked(
        inputs.seed, inputs.chosen_level, inputs.sheet, inputs.local_code, inputs.day
    )
    made = sheet(asked, lambda drawn, taken: _judge(inputs, drawn, taken), fit_of)
    finding = mark("sheet", Outcome.CANNOT_SAY)
    return Result(findings=[finding], answer=made, cautions=(part("practice.invented"),))


FIRST = Example(
    title="One reading, and its limit",
    request={
        "code": "gb",
        "on": "2026-11-24",
        "seed": 1,
        "level": "1",
    },
    outcome=Outcome.CANNOT_SAY,
)
SHEET = Example(
    title="Ten questions for a class",
    request={"code": "iec", "on": "2026-11-24", "seed": 3, "level": "2", "sheet": 10},
    outcome=Outcome.CANNOT_SAY,
)

CHECKER = Checker(
    slug="practice",
    title="Practise",
    question="What is wrong with this device, and what do you do about it?",
    inputs=Inputs,
    check=check,
    examples=(FIRST, SHEET),
)
