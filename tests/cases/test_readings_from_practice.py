"""Readings from practice get the verdict a careful practitioner gives."""

from __future__ import annotations

import tomllib
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from checkers import run

FILE = Path(__file__).with_name("readings_from_practice.toml")
CASES = tomllib.loads(FILE.read_text(encoding="utf-8"))["case"]


def plain(value: Any) -> Any:
    """Return a request with its days as text, as JSON would have them."""
    if isinstance(value, dict):
        return {key: plain(one) for key, one in value.items()}
    return value.isoformat() if isinstance(value, date) else value


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_a_case_from_practice_has_its_verdict(case: dict[str, Any]) -> None:
    """The outcome, the words and the rules that fail are those the case names."""
    reply = run("readings", plain(case["request"]))

    assert reply["kind"] == "result", reply
    assert case["outcome"] == reply["outcome"], [f["says"] for f in reply["findings"]]
    assert case.get("says", "") in " ".join(finding["says"] for finding in reply["findings"])
    failed = {one["judges"] for one in reply["findings"] if one["outcome"] == "fail"}
    assert set(case.get("fails", [])) <= failed
