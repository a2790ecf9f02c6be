"""A wrong try gives nothing away, a hint helps, and whoever does not know is told."""

from __future__ import annotations

import re
from typing import Any

import pytest

from checkers import run
from checkers.domain.causes import ACTIONS, CAUSES, NO_REMEDY, SAFETY_FIRST
from checkers.judgement.practice.drills import DRILLS
from tests.catalogue.test_practice import ASKING_CAUSES, LEVELS, SOME_DAY, cause_behind

SEEDS = range(1, 9)


def replied(seed: int, level: str, *done: str, **asked: Any) -> dict[str, Any]:
    """Return the reply to a device, after what was done, to whatever else is asked."""
    actions = [{"do": one} for one in done]
    reply = run("practice", {**SOME_DAY, "seed": seed, "level": level, "actions": actions, **asked})
    assert reply["kind"] == "result", reply
    return reply


def tried(seed: int, level: str, *done: str, **decision: str) -> dict[str, Any]:
    """Return the only mark of a try."""
    (found,) = replied(seed, level, *done, trying="yes", decision=decision)["findings"]
    return dict(found)


@pytest.mark.parametrize("level", ASKING_CAUSES)
@pytest.mark.parametrize("seed", SEEDS)
def test_a_wrong_cause_is_refused_without_naming_the_right_one(level: str, seed: int) -> None:
    """Nor is the true cause anywhere else in the reply; only the true one is right."""
    hidden = cause_behind(seed, level)
    for code in DRILLS.levels[int(level) - 1].causes:
        reply = replied(seed, level, "ramp", trying="yes", decision={"cause": code})
        (found,) = reply["findings"]

        assert (found["outcome"] == "pass") == (code == hidden)
        if code != hidden:
            assert CAUSES[code].name in found["says"]
            assert CAUSES[hidden].name not in str(reply["findings"]) + str(reply["answer"])
            assert reply["explanations"] == []


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("seed", SEEDS)
def test_a_wrong_verdict_names_the_reading_that_decides(level: str, seed: int) -> None:
    """One of four is right; the others are sent back to the same reading and its table."""
    marked = {
        verdict: tried(seed, level, limits=verdict)
        for verdict in ("pass", "fail", "borderline", "cannot-say")
    }
    right = [verdict for verdict, one in marked.items() if one["outcome"] == "pass"]

    assert len(right) == 1
    for verdict, one in marked.items():
        assert one["sources"] == marked[right[0]]["sources"]
        if verdict != right[0]:
            assert one["says"].startswith(f"Not right: {verdict}. Look again at ")


@pytest.mark.parametrize("level", ASKING_CAUSES)
@pytest.mark.parametrize("seed", SEEDS)
def test_a_wrong_action_says_what_it_would_be_right_for(level: str, seed: int) -> None:
    """And the actions offered on a level always hold a right one."""
    cause = CAUSES[cause_behind(seed, level)]
    offered = DRILLS.levels[int(level) - 1].actions
    outcomes = {key: tried(seed, level, action=key)["outcome"] for key in offered}

    assert {key for key, one in outcomes.items() if one == "pass"} == {cause.action, *cause.also}
    wrong = next(key for key, one in outcomes.items() if one == "fail")
    assert ACTIONS[wrong] in tried(seed, level, action=wrong)["says"]


def test_operating_a_sticking_device_until_it_is_quick_is_marked_wrong() -> None:
    """It is offered, because it is often done; the first operation that failed stands."""
    seed = next(one for one in range(1, 99) if cause_behind(one, "3") == "slow-mechanism")
    wrong, right = (tried(seed, "3", action=one) for one in ("exercise", "replace"))

    assert (wrong["outcome"], right["outcome"]) == ("fail", "pass")
    assert NO_REMEDY["exercise"] in wrong["says"]
    assert right["says"].startswith(f"Right: {SAFETY_FIRST}")


def test_a_cause_that_the_readings_point_to_is_not_simply_wrong() -> None:
    """With one reading that any sound device shows, in good order is a fair guess."""
    seed = next(
        seed
        for seed in range(1, 200)
        if cause_behind(seed, "3") == "button-failed"
        and re.fullmatch(r"[\d.]+ ms", replied(seed, "3")["answer"]["readings"][0]["shows"])
    )

    assert tried(seed, "3", cause="in-good-order")["outcome"] == "borderline"


def test_a_type_that_the_equipment_rules_out_is_no_fair_guess_at_good_order() -> None:
    """Whoever compares the marking with what is connected sees it: no reading is needed."""
    seed = next(one for one in range(1, 200) if cause_behind(one, "5") == "type-too-low")

    assert tried(seed, "5", cause="in-good-order")["outcome"] == "fail"
    assert "type" in tried(seed, "5", cause="type-too-low")["says"].lower()


@pytest.mark.parametrize("seed", SEEDS)
def test_whoever_does_not_know_is_told(seed: int) -> None:
    """It is no mistake, and no right answer."""
    cause = CAUSES[cause_behind(seed, "4")]
    unknown = "do-not-know"

    assert cause.name in tried(seed, "4", cause=unknown)["says"]
    assert cause.do_next in tried(seed, "4", action=unknown)["says"]
    for step in ("limits", "cause", "action"):
        assert tried(seed, "4", **{step: unknown})["outcome"] == "cannot-say"


def test_what_explain_makes_of_it_is_told_at_the_end() -> None:
    """With the cause named, causes and chances stand below; before that they do not."""
    end = replied(2, "3", "ramp", decision={"limits": "fail", "cause": "do-not-know"})
    before = replied(2, "3", "ramp", decision={"limits": "fail"})

    assert end["explanations"][0]["probability"] > 0
    assert before["explanations"] == []


def test_a_hint_on_limits_names_them_with_their_tables() -> None:
    """Without saying whether they are kept."""
    (found,) = replied(1, "2", hint="limits")["findings"]

    assert "ms" in found["says"]
    assert found["sources"]
    assert found["outcome"] == "cannot-say"


@pytest.mark.parametrize("level", ASKING_CAUSES)
@pytest.mark.parametrize("seed", range(1, 5))
def test_a_hint_on_tests_names_something_that_can_be_done(level: str, seed: int) -> None:
    """In the words of the list that the learner chooses from, or says that enough is known."""
    says = replied(seed, level, hint="test")["findings"][0]["says"]
    words = [f"Most would be told by: {thing.words}." for thing in DRILLS.things.values()]

    assert says in words or says.startswith("Nothing that is left")


@pytest.mark.parametrize("level", ASKING_CAUSES)
@pytest.mark.parametrize("seed", range(1, 5))
def test_a_hint_on_the_cause_leaves_the_true_one_open(level: str, seed: int) -> None:
    """It stands in the list, whatever was done."""
    says = replied(seed, level, "ramp", hint="cause")["findings"][0]["says"]

    assert CAUSES[cause_behind(seed, level)].name in says


def test_a_hint_on_the_action_waits_for_the_cause() -> None:
    """What a cause means is told to whoever has named it."""
    hidden = cause_behind(2, "4")
    early = replied(2, "4", hint="action")["findings"][0]["says"]
    late = replied(2, "4", hint="action", decision={"cause": hidden})["findings"][0]["says"]

    assert early == "Name the cause first."
    assert late == CAUSES[hidden].means


def test_the_first_level_shows_one_reading_and_not_always_the_same_test() -> None:
    """No answer is the usual one: of forty devices each verdict but borderline comes often."""
    readings = [replied(seed, "1")["answer"]["readings"] for seed in range(1, 41)]
    right = [
        next(
            verdict
            for verdict in ("pass", "fail", "borderline", "cannot-say")
            if tried(seed, "1", limits=verdict)["outcome"] == "pass"
        )
        for seed in range(1, 41)
    ]

    assert all(len(one) == 1 for one in readings)
    assert len({one[0]["done"] for one in readings}) >= 5
    assert all(right.count(verdict) >= 4 for verdict in ("pass", "fail", "cannot-say"))


@pytest.mark.parametrize("level", LEVELS)
def test_a_question_of_a_sheet_can_be_opened_as_a_case(level: str) -> None:
    """Its number draws the same device, even where the sheet's own number is the last one."""
    sheet = run("practice", {**SOME_DAY, "seed": 999_999, "level": level, "sheet": 4})["answer"]
    for question in sheet["questions"]:
        case = replied(question["seed"], level)["answer"]

        assert case["scene"] == question["scene"]
        assert f"{case['readings'][0]['done']}: {case['readings'][0]['shows']}" in str(question)


@pytest.mark.parametrize("level", ASKING_CAUSES)
def test_a_sheet_says_what_to_choose_from(level: str) -> None:
    """Every answer is among the choices, and more than the right ones are."""
    sheet = run("practice", {**SOME_DAY, "seed": 4, "level": level, "sheet": 10})["answer"]

    assert {one["cause"] for one in sheet["answers"]} <= set(sheet["causes"])
    for answer in sheet["answers"]:  # with what safety asks for in front, where there is danger
        assert answer["action"].removeprefix(SAFETY_FIRST).strip() in sheet["actions"]
    assert len(sheet["actions"]) >= 5


def test_a_device_watched_once_excuses_no_other_reading() -> None:
    """A first operation that was too slow stays a failure, though the next is seen to be quick."""
    seed = next(
        seed
        for seed in range(1, 400)
        if cause_behind(seed, "3") == "slow-mechanism"
        and replied(seed, "3")["answer"]["readings"][0]["shows"] == "> 300 ms"
        and replied(seed, "3", "watch")["answer"]["readings"][1]["shows"].endswith(
            "ms: this device opened"
        )
    )

    assert tried(seed, "3", "watch", limits="fail")["outcome"] == "pass"


@pytest.mark.parametrize("seed", SEEDS)
def test_a_watched_test_shows_its_time_and_what_opened(seed: int) -> None:
    """Both stand side by side, so that the two can be compared."""
    shows = replied(seed, "4", "watch")["answer"]["readings"][1]["shows"]

    assert re.fullmatch(
        r"([\d.]+ ms: (this|another) device opened"
        r"|> 300 ms: (nothing opened|this device opened, though the timer ran on))",
        shows,
    )


@pytest.mark.parametrize("seed", range(1, 9))
def test_a_wrong_cause_is_told_what_speaks_against_it(seed: int) -> None:
    """Words that say nothing speaks against a cause stand only where nothing is named."""
    hidden = cause_behind(seed, "3")
    for code in DRILLS.levels[2].causes:
        if code == hidden:
            continue
        says = tried(seed, "3", "ramp", "button", cause=code)["says"]
        reasons = says.partition("Against it speaks: ")[2]

        assert bool(reasons) != any(
            words in says for words in ("speaks clearly against", "rules it out", "points there")
        )
        assert reasons != "."
