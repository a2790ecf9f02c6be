"""Practice: the same request shows the same, nothing is given away, marks have reasons."""

from __future__ import annotations

from datetime import date
from statistics import fmean
from typing import Any

import pytest

from checkers import run
from checkers.catalogue.practice import fit_of
from checkers.domain.causes import CAUSES
from checkers.domain.codes.registry import CODES
from checkers.judgement.practice.drills import DRILLS
from checkers.judgement.practice.exercise import draw

LEVELS = [str(level.number) for level in DRILLS.levels]
ASKING_CAUSES = [str(level.number) for level in DRILLS.levels if "cause" in level.asks]
SOME_DAY = {"code": "gb", "on": "2026-11-24"}


def practise(seed: int, level: str, *done: str, **decision: str) -> dict[str, Any]:
    """Return the reply for a device, after what was done and decided."""
    actions = [{"do": one} for one in done]
    request = {"seed": seed, "level": level, "actions": actions, "decision": decision}
    reply = run("practice", SOME_DAY | request)
    assert reply["kind"] == "result", reply
    return reply


def cause_behind(seed: int, level: str) -> str:
    """Return the code of the hidden cause."""
    chosen = DRILLS.levels[int(level) - 1]
    return draw(seed, chosen, CODES["gb"], date(2026, 11, 24), fit_of).cause


@pytest.mark.parametrize("level", LEVELS)
def test_the_same_request_shows_the_same(level: str) -> None:
    """Nothing is kept between requests."""
    assert practise(5, level, "ramp", "button") == practise(5, level, "ramp", "button")


@pytest.mark.parametrize("level", LEVELS)
def test_another_test_leaves_the_earlier_ones_as_they_were(level: str) -> None:
    """What was shown stays shown."""
    before = practise(5, level, "ramp")["answer"]["readings"]
    after = practise(5, level, "ramp", "button", "five-0")["answer"]["readings"]

    assert before == after[: len(before)]


@pytest.mark.parametrize("level", LEVELS)
def test_nothing_is_given_away_before_a_decision(level: str) -> None:
    """No cause is named, no verdict is spoken."""
    reply = practise(9, level, "ramp")
    text = str(reply["findings"]) + str(reply["answer"])

    assert reply["outcome"] == "cannot-say"
    assert not any(cause.name in text for cause in CAUSES.values())


@pytest.mark.parametrize("level", LEVELS)
def test_other_numbers_are_other_devices(level: str) -> None:
    """Forty numbers give many different readings, and every cause of the level."""
    shown = {str(practise(seed, level)["answer"]["readings"]) for seed in range(1, 41)}
    causes = {cause_behind(seed, level) for seed in range(1, 81)}

    assert len(shown) > 15
    assert causes == set(DRILLS.levels[int(level) - 1].causes)


@pytest.mark.parametrize("level", LEVELS)
def test_the_right_verdict_is_that_of_the_readings_checker(level: str) -> None:
    """Exactly one of the four verdicts is marked right, with its reason."""
    marked = {
        verdict: practise(3, level, limits=verdict)["findings"][0]
        for verdict in ("pass", "fail", "borderline", "cannot-say")
    }
    right = [verdict for verdict, one in marked.items() if one["outcome"] == "pass"]

    assert len(right) == 1
    assert all(f": {right[0]}." in one["says"] for one in marked.values())


def test_a_mark_of_limits_names_the_table_it_rests_on() -> None:
    """Document and clause stand beside the reason."""
    found = practise(1, "1", limits="pass")["findings"][0]

    assert found["sources"]
    assert found["limit"]


@pytest.mark.parametrize("level", ASKING_CAUSES)
@pytest.mark.parametrize("seed", range(1, 13))
def test_the_whole_right_decision_is_marked_right(level: str, seed: int) -> None:
    """The true cause and its action are right, whatever the tests chosen."""
    code = cause_behind(seed, level)
    done = DRILLS.told_by[code]
    reply = practise(seed, level, *done, limits="fail", cause=code, action=CAUSES[code].action)
    marks = {one["about"]: one["outcome"] for one in reply["findings"]}

    assert marks["cause"] == "pass"
    assert marks["action"] == "pass"


@pytest.mark.parametrize("level", ASKING_CAUSES)
def test_the_cause_stays_hidden_until_one_is_named(level: str) -> None:
    """Judging the limits first, or choosing what to do, gives nothing away."""
    reply = practise(6, level, limits="fail")

    assert "cause" not in reply["answer"]
    assert not any(cause.name in str(reply["findings"]) for cause in CAUSES.values())


def test_a_wrong_cause_is_not_right_and_the_reason_is_told() -> None:
    """The true cause is named with its chance from what was done."""
    wrong = "button-failed" if cause_behind(2, "3") != "button-failed" else "wrong-device"
    found = practise(2, "3", "ramp", "button", limits="fail", cause=wrong)["findings"]
    mark = next(one for one in found if one["about"] == "cause")

    assert mark["outcome"] in {"fail", "borderline"}
    assert CAUSES[cause_behind(2, "3")].name in mark["says"]


@pytest.mark.parametrize("level", LEVELS)
def test_a_sheet_keeps_questions_and_answers_apart(level: str) -> None:
    """Ten numbered questions without a cause in them, and ten answers with the same numbers."""
    reply = run("practice", SOME_DAY | {"seed": 4, "level": level, "sheet": 10})
    questions, answers = reply["answer"]["questions"], reply["answer"]["answers"]

    assert list(range(1, 11)) == [one["number"] for one in questions]
    assert [one["number"] for one in questions] == [one["number"] for one in answers]
    assert not any(cause.name in str(questions) for cause in CAUSES.values())
    assert all(one["limits"] and one["because"] for one in answers)
    assert ("cause" in answers[0]) == (level in ASKING_CAUSES)


@pytest.mark.parametrize(
    ("field", "value"),
    [("seed", 0), ("level", "9"), ("sheet", 99), ("actions", [{"do": "hammer"}])],
)
def test_a_request_that_cannot_be_is_refused(field: str, value: Any) -> None:
    """The field is named."""
    errors = run("practice", SOME_DAY | {field: value})["errors"]

    assert any(name.startswith(field) for name in errors)


def test_on_a_sheet_what_opened_fits_the_answer() -> None:
    """Where another device tripped first, or the timer ran on, it was seen so, freaks apart."""
    seen = {"other-device-first": "another device opened", "timer-ran-on": "the timer ran on"}
    named = {CAUSES[code].name: words for code, words in seen.items()}
    fits = []
    for level in ("3", "4"):
        for seed in range(1, 9):
            sheet = run("practice", SOME_DAY | {"seed": seed, "level": level, "sheet": 30})
            answer = sheet["answer"]
            for question, told in zip(answer["questions"], answer["answers"], strict=True):
                if told["cause"] in named:
                    fits.append(named[told["cause"]] in str(question["readings"]))

    assert len(fits) > 20
    assert sum(fits) / len(fits) > 0.9


@pytest.mark.parametrize("level", ASKING_CAUSES)
def test_what_tells_a_cause_tells_it(level: str) -> None:
    """With the telling things done, explain finds most causes likely, and each a fair chance."""
    given = DRILLS.levels[int(level) - 1].given
    chances: dict[str, list[float]] = {}
    for seed in range(1, 61):
        code = cause_behind(seed, level)
        done = [one for one in DRILLS.telling(code) if one not in given]
        end = practise(seed, level, *done, cause="do-not-know")["explanations"]
        found = {one["code"]: one["probability"] for one in end}
        chances.setdefault(code, []).append(found.get(code, 0.0))
    every = [one for found in chances.values() for one in found]

    assert sum(one >= 0.5 for one in every) >= 36
    assert all(fmean(one) > 0.15 for one in chances.values()), chances
