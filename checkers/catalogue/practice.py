"""A fresh device with a hidden condition: read, decide, be marked, be told why."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from checkers.catalogue import readings
from checkers.domain.causes import ACTIONS, CAUSES
from checkers.domain.checker import Checker, Example
from checkers.domain.drills import DRILLS, Level
from checkers.domain.fields import choice, group, many, whole_number
from checkers.domain.question import Question
from checkers.domain.verdicts import Finding, Judges, Outcome, Result
from checkers.judgement.practice.drawn import Drawn, draw
from checkers.judgement.practice.marking import Decision, marks
from checkers.judgement.practice.sheet import SheetAsked, sheet
from checkers.judgement.practice.taken import Taken, take

OUTCOMES = (
    ("pass", "pass"),
    ("fail", "fail"),
    ("borderline", "borderline"),
    ("cannot-say", "cannot say"),
)
INVENTED = "Practice: place, device and readings are invented; nothing here is about a real device."


@dataclass(frozen=True, slots=True)
class Action:
    """One thing the learner does."""

    do: str = choice(tuple((key, one.words) for key, one in DRILLS.things.items()), "Do")


@dataclass(frozen=True, slots=True)
class Decided:
    """What the learner decides, once there is enough to go by."""

    limits: str = choice(OUTCOMES, "The readings", default="")
    cause: str = choice(
        tuple((code, one.name) for code, one in CAUSES.items()),
        "The cause",
        default="",
    )
    action: str = choice(tuple(ACTIONS.items()), "What to do about it", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A seed and a level, what was done so far, and the decision."""

    seed: int = whole_number("Number of the device", least=1, most=999_999, default=1)
    level: str = choice(
        tuple((str(one.number), f"{one.number}: {one.title}") for one in DRILLS.levels),
        "Level",
        default="1",
    )
    actions: tuple[Action, ...] = many(Action, "What you do", most=20)
    decision: Decided = group(Decided, "Your decision", default=Decided)
    sheet: int = whole_number("Questions on a printed sheet", least=0, most=30, default=0)

    @property
    def chosen_level(self) -> Level:
        """The level asked for."""
        return DRILLS.levels[int(self.level) - 1]


def check(inputs: Inputs) -> Result:
    """Show what the chosen tests read, and mark the decision once it is made.

    Inputs: seed and level, which give the device; what was done, in order; the decision.
    Result: in `answer` the scene, the device as noted and what was shown; findings are
    the marks. With `sheet`, questions and answers instead. The same request always gives
    the same reply.
    """
    if inputs.sheet:
        return _sheet(inputs)
    level = inputs.chosen_level
    drawn = draw(inputs.seed, level, inputs.local_code, inputs.day)
    keys = [*level.given, *(one.do for one in inputs.actions)]
    things = [DRILLS.things[key] for key in keys]
    taken = take(things, drawn.possible, drawn.case, drawn.known, inputs.seed)
    decided = Decision(inputs.decision.limits, inputs.decision.cause, inputs.decision.action)
    answer = _shown(level, drawn, taken)
    if not decided.is_made:
        return Result(findings=[_waiting(level)], answer=answer, cautions=(INVENTED,))
    found = marks(decided, level.asks, drawn, taken, _judge(inputs, drawn, taken))
    right = sum(one.outcome is Outcome.PASS for one in found)
    answer["marks"] = f"{right} of {len(found)} right"
    if decided.cause or "cause" not in level.asks:
        answer["cause"] = CAUSES[drawn.cause].name
    return Result(findings=found, answer=answer, cautions=(INVENTED,))


def _judge(inputs: Inputs, drawn: Drawn, taken: Sequence[Taken]) -> Result:
    """Return what the readings checker says, with the clamps and what was seen."""
    listed = tuple(one.reading for one in taken if one.reading is not None)
    currents = {one.thing.look: one.current for one in taken if one.current is not None}
    opened = [one.opened for one in taken if one.opened is not None]
    on = any(one.loads == "on" for one in listed)
    circuit = replace(
        drawn.case.circuit,
        loads="on" if on else "off",
        dc_residual=currents.get("dc"),
        standing_leakage=currents.get("leakage"),
        seen_to_open=opened[-1] if opened else None,
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


def _shown(level: Level, drawn: Drawn, taken: Sequence[Taken]) -> dict[str, Any]:
    return {
        "scene": drawn.scene.words,
        "device": drawn.device_words,
        "task": level.task,
        "readings": [{"done": one.thing.words, "shows": one.shows} for one in taken],
    }


def _waiting(level: Level) -> Finding:
    asked = " and ".join(word for word in ("limits", "cause", "action") if word in level.asks)
    return Finding(
        about="decision",
        outcome=Outcome.CANNOT_SAY,
        says=f"Nothing is marked yet: decide on {asked}, or do more first.",
        judges=Judges.FUNCTION,
    )


def _sheet(inputs: Inputs) -> Result:
    asked = SheetAsked(
        inputs.seed, inputs.chosen_level, inputs.sheet, inputs.local_code, inputs.day
    )
    made = sheet(asked, lambda drawn, taken: _judge(inputs, drawn, taken))
    finding = Finding(
        about="sheet",
        outcome=Outcome.CANNOT_SAY,
        says="Questions and, apart from them, their answers. Nothing is judged here.",
        judges=Judges.FUNCTION,
    )
    return Result(findings=[finding], answer=made, cautions=(INVENTED,))


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
