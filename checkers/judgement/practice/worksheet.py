"""A sheet of questions with the answers apart, for a class."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from checkers.domain.causes import ACTIONS, CAUSES
from checkers.domain.codes.registry import Code
from checkers.domain.verdicts import Result
from checkers.judgement.practice.drills import DRILLS, PracticeLevel, Thing
from checkers.judgement.practice.exercise import LAST_SEED, Drawn, Fit, draw
from checkers.judgement.practice.progress import deciding, told
from checkers.judgement.practice.test_results import Taken, take
from checkers.wording.book import part

SEEDS_APART = 7919  # questions of one sheet are drawn from seeds so far apart

Judge = Callable[[Drawn, Sequence[Taken]], Result]


@dataclass(frozen=True, slots=True)
class SheetAsked:
    """What a sheet is made from: seed, level, how many questions, and whose limits."""

    seed: int
    level: PracticeLevel
    count: int
    code: Code
    day: date


def sheet(asked: SheetAsked, judge: Judge, fit: Fit) -> dict[str, Any]:
    """Return questions and, apart, their answers.

    Inputs: what is asked; what judges readings, and a device at a place. Result: two lists,
    each entry with its number and the seed that draws its device again; what may be chosen
    from, where a cause or an action is asked. Where a cause is asked, what tells it is among
    the readings.
    """
    questions, answers = [], []
    for number in range(1, asked.count + 1):
        own = seed_of(asked.seed, number)
        drawn = draw(own, asked.level, asked.code, asked.day, fit)
        things = _things(asked.level, drawn)
        taken = take(things, drawn.possible, drawn.case, drawn.known, drawn.shown_by)
        same = {"number": number, "seed": own}
        questions.append(same | _question(asked.level, drawn, taken))
        answers.append(same | _answer(asked.level, drawn, judge(drawn, taken)))
    return {"questions": questions, **_choices(asked.level), "answers": answers}


def seed_of(seed: int, number: int) -> int:
    """Return the seed of a question, from the sheet's seed and the question's number."""
    return (seed + SEEDS_APART * number - 1) % LAST_SEED + 1


def _choices(level: PracticeLevel) -> dict[str, list[str]]:
    found = {}
    if "cause" in level.asks:
        found["causes"] = [CAUSES[code].name for code in level.causes]
    if "action" in level.asks:
        found["actions"] = [ACTIONS[key] for key in level.actions]
    return found


def _things(level: PracticeLevel, drawn: Drawn) -> list[Thing]:
    keys = list(drawn.given)
    if "cause" in level.asks:
        keys += [key for key in DRILLS.telling(drawn.cause) if key not in drawn.given]
    return [DRILLS.things[key] for key in keys]


def _question(level: PracticeLevel, drawn: Drawn, taken: Sequence[Taken]) -> dict[str, Any]:
    return {
        "scene": drawn.scene.words,
        "device": drawn.device_words,
        "readings": [_done_and_shown(one) for one in taken],
        "task": level.task,
    }


def _done_and_shown(one: Taken) -> str:
    return part("practice.done-and-shown", done=one.thing.words, shows=one.shows)


def _answer(level: PracticeLevel, drawn: Drawn, judged: Result) -> dict[str, Any]:
    why = deciding(judged)
    cause = CAUSES[drawn.cause]
    answer = {
        "limits": judged.outcome.value,
        "because": told(why),
        "sources": [source.words for source in why.sources],
    }
    if "cause" in level.asks:
        answer |= {"cause": cause.name, "action": cause.do_next}
    return answer
