"""Every code of a finding is produced by a request, and cites as its words say."""

from __future__ import annotations

import ast
import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from checkers import run
from checkers.catalogue import CHECKERS
from checkers.domain.tables.data_files import read_toml
from checkers.domain.verdicts import Finding
from checkers.wording.book import Cites, room, rooms, words_of

HERE = Path(__file__).parent
PACKAGE = HERE.parents[1] / "checkers"
REQUESTS = HERE / "requests"  # a file a room: the requests that no example of a checker makes
CASES = [
    case for path in sorted(REQUESTS.iterdir()) for case in read_toml(path, path.name)["request"]
]
# A hole of a template, an empty fact, a name of the code.
UNFILLED = re.compile(r"[{}]|\bNone\b(?! of)|\b\w+\.[A-Z_]{2,}\b")


def _requests() -> Iterator[tuple[str, Any]]:
    for checker in CHECKERS:
        for example in checker.examples:
            yield checker.slug, example.request
    yield from ((case["checker"], case["asks"]) for case in CASES)


def _findings(reply: Any) -> Iterator[Mapping[str, Any]]:
    """Yield every finding in a reply, also those in the rows of a schedule."""
    if isinstance(reply, dict):
        if {"about", "outcome", "says"} <= reply.keys():
            yield reply
        for value in reply.values():
            yield from _findings(value)
    elif isinstance(reply, list):
        for value in reply:
            yield from _findings(value)


@pytest.fixture(scope="module")
def produced() -> Mapping[str, list[Mapping[str, Any]]]:
    """The findings of all those requests, by code."""
    found: dict[str, list[Mapping[str, Any]]] = defaultdict(list)
    for slug, request in _requests():
        reply = run(slug, request)
        assert reply["kind"] == "result", (slug, request, reply)
        for one in _findings(reply):
            found[one.get("code", "")].append(one)
    return found


CODES = [f"{name}.{code}" for name in sorted(rooms()) for code in room(name).findings]


@pytest.mark.parametrize("code", CODES)
def test_a_code_has_an_example_and_cites_as_it_says(
    produced: Mapping[str, list[Mapping[str, Any]]], code: str
) -> None:
    """A code that nothing produces is dead, and one that must cite never stands alone."""
    assert produced[code], "no request produces it"
    assert all(one["says"] for one in produced[code])
    cited = {bool(one["sources"]) for one in produced[code]}
    allowed = {Cites.ALWAYS: {True}, Cites.NEVER: {False}, Cites.SOMETIMES: {True, False}}
    assert cited <= allowed[words_of(code).cites]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["produces"])
def test_a_request_produces_what_it_is_there_for(case: Mapping[str, Any]) -> None:
    """Its code is among the findings, so the request is no leftover."""
    found = _findings(run(case["checker"], case["asks"]))
    assert case["produces"] in [one["code"] for one in found]


def test_no_fact_is_left_out_of_a_sentence(
    produced: Mapping[str, list[Mapping[str, Any]]],
) -> None:
    """No hole of a template, no empty fact and no name of the code is shown."""
    said = [
        one.get(key, "")
        for found in produced.values()
        for one in found
        for key in ("about", "says", "measured", "limit", "do_next")
    ]
    assert [text for text in said if UNFILLED.search(text)] == []


def test_no_sentence_of_a_finding_is_written_where_it_is_judged() -> None:
    """Only the room of words makes a Finding, in no room of judgement and in no checker."""
    rooms_of_code = [PACKAGE / "judgement", PACKAGE / "catalogue"]
    modules = [path for folder in rooms_of_code for path in folder.rglob("*.py")]
    assert [str(path) for path in modules if _makes_findings(path)] == []


def _makes_findings(path: Path) -> bool:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    calls = (one.func for one in ast.walk(tree) if isinstance(one, ast.Call))
    return any(isinstance(one, ast.Name) and one.id == Finding.__name__ for one in calls)
