"""The public contract: a request as JSON values or text in, the reply out.

The command line, the tests and the browser's worker all call this and nothing else.
"""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Mapping
from enum import Enum
from typing import Any

from checkers.catalogue import SLUGS, checker_for
from checkers.domain.checker import Checker
from checkers.domain.codes.binding import seen_from
from checkers.domain.codes.registry import Code
from checkers.domain.errors import DataError, InvalidRequest, quoted
from checkers.domain.inputs.defaults import assumed_in
from checkers.domain.inputs.parsing import parse_inputs
from checkers.domain.inputs.request_text import read_request
from checkers.domain.question import Question
from checkers.domain.sources.cautions import cautions_against, cautions_for
from checkers.domain.verdicts import Explanation, Finding, NextTest, Result, StillToDo, Subject
from checkers.judgement.unknown_edition import passed_by_a_known_code

DAMAGED = "The data of this copy is damaged; nothing was judged. Fetch a sound copy."
CRASH_TEXT = "This checker failed on the request. Nothing was judged. Please report the code."


def run(slug: str, request: object) -> dict[str, Any]:
    """Answer a request with one checker.

    Inputs: the checker's slug; the request as JSON values.
    Result: the reply as JSON values; its `kind` is result, invalid, damaged or crash.
    Never raises on a request, whatever it holds.
    """
    if slug not in SLUGS:
        return invalid(slug, {"checker": f"{quoted(slug)} is not one of {', '.join(SLUGS)}"})
    try:
        checker = checker_for(slug)
        inputs = parse_inputs(checker.inputs, request)
        result = passed_by_a_known_code(checker.check(inputs), inputs.local_code, inputs.day)
        return reply_to(checker, inputs, result, request)
    except InvalidRequest as bad:
        return invalid(slug, bad.errors)
    except DataError as bad:
        return damaged(slug, bad)
    except Exception as error:  # noqa: BLE001  # the contract: a crash is a reply
        return crash(slug, error)


def answer(slug: str, request: str) -> str:
    """Answer a request given as JSON text, with the reply as JSON text."""
    try:
        asked = read_request(request)
    except InvalidRequest as bad:
        return json.dumps(invalid(slug, bad.errors), ensure_ascii=False)
    return json.dumps(run(slug, asked), ensure_ascii=False)


def reply_to(checker: Checker, inputs: Question, result: Result, request: object) -> dict[str, Any]:
    """Return a checker's result as the reply of the contract, with what the request left out."""
    code = inputs.local_code
    return {
        "kind": "result",
        "checker": checker.slug,
        "code": inputs.code,
        "edition": code.edition_on(inputs.day),
        "on": inputs.day.isoformat(),
        "outcome": result.outcome.value,
        "findings": [_finding(one, code) for one in result.findings],
        "answer": _plain(result.answer),
        "explanations": [_explanation(one) for one in result.explanations],
        "next_test": _next_test(result.next_test),
        "still_to_do": [_told(one) for one in result.still_to_do],
        "cautions": _cautions(checker, inputs, result),
        "local_note": code.local_note,
        "assumed": _plain(assumed_in(checker.inputs, request, inputs)),
    }


def _cautions(checker: Checker, inputs: Question, result: Result) -> list[str]:
    """Return the cautions of the answer, of the equipment asked about, and of the checker."""
    said = (*result.cautions, *cautions_against(inputs.hazards), *cautions_for(checker.slug))
    return list(dict.fromkeys(said))


def _finding(finding: Finding, code: Code) -> dict[str, Any]:
    """Return a finding as JSON values; a rule of another country is marked as one."""
    seen = tuple(seen_from(code, source) for source in finding.sources)
    finding = dataclasses.replace(finding, sources=seen)
    plain = _plain(finding) | {"subject": _told(finding.subject)}
    if not finding.measured:
        plain.pop("measured_as")
    return {name: value for name, value in plain.items() if value or name in ALWAYS}


def _told(of: Subject | StillToDo | None) -> dict[str, Any]:
    """Return what is told of a reading or a test; what is not is left out."""
    told = {} if of is None else _plain(of)
    return {name: value for name, value in told.items() if value not in {None, ""}}


ALWAYS = frozenset({"about", "outcome", "measured", "limit", "says", "margin", "judges", "sources"})


def _explanation(explanation: Explanation) -> dict[str, Any]:
    plain = _plain(explanation)
    plain["for"] = plain.pop("speaks_for")
    plain["against"] = plain.pop("speaks_against")
    return dict(plain)


def _next_test(test: NextTest | None) -> dict[str, Any] | None:
    return None if test is None else dict(_plain(test))


ALREADY_PLAIN = frozenset({str, int, float, bool, type(None)})


def _plain(value: Any) -> Any:
    if type(value) in ALREADY_PLAIN:
        return value
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        names = (field.name for field in dataclasses.fields(value))
        return {name: _plain(getattr(value, name)) for name in names}
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Mapping):
        return {name: _plain(one) for name, one in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(one) for one in value]
    return value


def invalid(slug: str, errors: Mapping[str, str]) -> dict[str, Any]:
    """Return the reply to a request that could not be read."""
    return {"kind": "invalid", "checker": slug, "errors": dict(errors)}


def damaged(slug: str, error: DataError) -> dict[str, Any]:
    """Return the reply where the data of this copy is damaged, with its file and row."""
    return {
        "kind": "damaged",
        "checker": slug,
        "file": error.file,
        "row": error.row,
        "text": f"{DAMAGED} {error}",
    }


def crash(slug: str, error: Exception) -> dict[str, Any]:
    """Return the reply to a request on which a checker failed; nothing else leaks."""
    return {
        "kind": "crash",
        "checker": slug,
        "code": f"{slug}-{type(error).__name__}",
        "text": CRASH_TEXT,
    }
