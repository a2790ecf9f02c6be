"""The registry is walked, so that no checker can be half done."""

from __future__ import annotations

import json
import pkgutil
from typing import Any

import pytest

import checkers.catalogue
from checkers import answer, run
from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker, Example
from checkers.domain.codes.registry import CODES
from checkers.domain.inputs.fields import Input, Kind, inputs_of
from checkers.domain.question import Question
from checkers.domain.sources.cautions import cautions_for
from checkers.domain.sources.documents import EVIDENCE_WORDS

EVERY = pytest.mark.parametrize("checker", CHECKERS, ids=[one.slug for one in CHECKERS])
EXAMPLES = [(checker, example) for checker in CHECKERS for example in checker.examples]
EVERY_EXAMPLE = pytest.mark.parametrize(
    ("checker", "example"), EXAMPLES, ids=[f"{c.slug}: {e.title}" for c, e in EXAMPLES]
)


def all_inputs(kind: type[Any]) -> list[Input]:
    """Return the inputs of a dataclass and of every group within it."""
    found = []
    for one in inputs_of(kind):
        found.append(one)
        if one.spec.group is not None:
            found += all_inputs(one.spec.group)
    return found


def test_every_file_of_the_catalogue_is_registered() -> None:
    """A checker's file is named for its slug, and stands in the list."""
    files = {module.name for module in pkgutil.iter_modules(checkers.catalogue.__path__)}

    assert {checker.slug.replace("-", "_") for checker in CHECKERS} == files


@EVERY
def test_a_checker_asks_one_question_and_shows_examples(checker: Checker) -> None:
    """Title, question and at least two examples are there."""
    assert checker.title
    assert checker.question.endswith("?")
    assert len(checker.examples) >= 2
    assert issubclass(checker.inputs, Question)


@EVERY
def test_every_input_has_its_words(checker: Checker) -> None:
    """No field comes without a label, no choice without its words."""
    for one in all_inputs(checker.inputs):
        assert one.spec.label, one.name
        assert all(choice.label for choice in one.spec.choices), one.name
        assert one.spec.kind is not Kind.CHOICE or one.spec.choices, one.name


@EVERY_EXAMPLE
def test_an_example_has_the_outcome_it_states(checker: Checker, example: Example) -> None:
    """Each example gives a result, with the outcome written beside it."""
    reply = run(checker.slug, example.request)

    assert reply["kind"] == "result", reply
    assert example.outcome == reply["outcome"], reply["findings"]


@EVERY_EXAMPLE
def test_a_reply_has_every_part_of_the_contract(checker: Checker, example: Example) -> None:
    """Findings, answer, explanations, cautions and the local note are all there."""
    reply = run(checker.slug, example.request)

    assert {"checker", "code", "edition", "on", "outcome", "findings", "answer"} <= set(reply)
    assert {"explanations", "next_test", "cautions", "local_note"} <= set(reply)
    assert set(cautions_for(checker.slug)) <= set(reply["cautions"])
    assert CODES[reply["code"]].local_note == reply["local_note"]
    assert json.loads(json.dumps(reply)) == reply
    for finding in reply["findings"]:
        assert finding["says"]
        assert all(one["evidence"] in EVIDENCE_WORDS for one in finding["sources"])


@EVERY
def test_an_unknown_field_is_refused_by_name(checker: Checker) -> None:
    """A misspelt field never goes unseen."""
    request = {**checker.examples[0].request, "ratde": 1}

    assert "ratde" in run(checker.slug, request)["errors"]


@EVERY
@pytest.mark.parametrize("request_text", ["", "[]", "null", "{", '{"device": 5}', '"x"'])
def test_a_broken_request_is_invalid_and_never_a_pass(checker: Checker, request_text: str) -> None:
    """Whatever arrives, the reply says what is wrong."""
    assert json.loads(answer(checker.slug, request_text))["kind"] == "invalid"


def test_an_unknown_checker_is_refused() -> None:
    """The reply names the checkers there are."""
    assert "readings" in run("nothing", {})["errors"]["checker"]
