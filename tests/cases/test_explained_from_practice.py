"""Readings from practice lead to the cause that those who knew found or named."""

from __future__ import annotations

import tomllib
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from checkers import run

FILE = Path(__file__).with_name("explained_from_practice.toml")
CASES = tomllib.loads(FILE.read_text(encoding="utf-8"))["case"]
EVERY = pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])


def plain(value: Any) -> Any:
    """Return a request with its days as text, as JSON would have them."""
    if isinstance(value, dict):
        return {key: plain(one) for key, one in value.items()}
    return value.isoformat() if isinstance(value, date) else value


def explained(case: dict[str, Any]) -> dict[str, Any]:
    """Return the reply to a case."""
    reply = run("explain", plain(case["request"]))
    assert reply["kind"] == "result", reply
    return reply


@EVERY
def test_the_cause_that_was_found_stands_where_it_should(case: dict[str, Any]) -> None:
    """The first right cause stands within the first few; a reading of no use is left out."""
    reply = explained(case)
    codes = [one["code"] for one in reply["explanations"]]

    if case.get("left_out"):
        assert any(one["says"].startswith("Left out") for one in reply["findings"])
    else:
        assert set(case["causes"]) & set(codes[: case["within"]]), reply["explanations"]
    assert set(case.get("then", [])) <= set(codes)


@EVERY
def test_an_explanation_is_never_a_verdict(case: dict[str, Any]) -> None:
    """Every finding is cannot-say, whatever the cause."""
    reply = explained(case)

    assert reply["outcome"] == "cannot-say"
    assert {one["outcome"] for one in reply["findings"]} == {"cannot-say"}
