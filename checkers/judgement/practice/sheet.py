"""A sheet of questions with the answers apart, for a class."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from checkers.domain.causes import CAUSES
from checkers.domain.codes import Code
from checkers.domain.drills import DRILLS, Level, Thing
from checkers.domain.verdicts import Result
from checkers.judgement.practice.drawn import Drawn, draw
from checkers.judgement.practice.marking import deciding
from checkers.judgement.practice.taken import Taken, take

SEEDS_APART = 7919  # questions of one sheet are drawn from seeds so far apart

Judge = Callable[[Drawn, Sequence[Taken]], Result]


@dataclass(frozen=True, slots=True)
class SheetAsked:
    """What a sheet is made from: seed, level, how many questions, and whose limits."""

    seed: int
    level: Level
    count: int
    code: Code
    day: date


def sheet(asked: SheetAsked, judge: Judge) -> dict[str, list[dict[str, Any]]]:
    """Return questions and, apart, their answers.

    Inputs: what is asked; what judges readings. Result: two lists, each entry with its
    number. Where a cause is asked, what tells it is among the readings.
    """
    questions, answers = [], []
    for number in range(1, asked.count + 1):
        own = asked.seed + SEEDS_APART * number
        drawn = draw(own, asked.level, asked.code, asked.day)
        things = _things(asked.level, drawn)
        taken = take(things, drawn.possible, drawn.case, drawn.known, own)
        questions.append(_question(number, asked.level, drawn, taken))
        answers.append(_answer(number, asked.level, drawn, judge(drawn, taken)))
    return {"questions": questions, "answers": answers}


def _things(level: Level, drawn: Drawn) -> list[Thing]:
    keys = list(level.given)
    if "cause" in level.asks:
        keys += [key for key in DRILLS.told_by[drawn.cause] if key not in keys]
    return [DRILLS.things[key] for key in keys]


def _question(number: int, level: Level, drawn: Drawn, taken: Sequence[Taken]) -> dict[str, Any]:
    return {
        "number": number,
        "scene": drawn.scene.words,
        "device": drawn.device_words,
        "readings": [f"{one.thing.words}: {one.shows}" for one in taken],
        "task": level.task,
    }


def _answer(number: int, level: Level, drawn: Drawn, judged: Result) -> dict[str, Any]:
    why = deciding(judged)
    cause = CAUSES[drawn.cause]
    answer = {
        "number": number,
        "limits": judged.outcome.value,
        "because": f"{why.about}: {why.says}",
        "sources": [source.words for source in why.sources],
    }
    if "cause" in level.asks:
        answer |= {"cause": cause.name, "action": cause.do_next}
    return answer
