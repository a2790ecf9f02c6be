"""Questions of device type from practice get the answer a careful practitioner gives."""

from __future__ import annotations

import tomllib
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from checkers import run

FILE = Path(__file__).with_name("types_from_practice.toml")
CASES = tomllib.loads(FILE.read_text(encoding="utf-8"))["case"]


def plain(request: dict[str, Any]) -> dict[str, Any]:
    """Return a request with its days as text, as JSON would have them."""
    return {
        key: value.isoformat() if isinstance(value, date) else value
        for key, value in request.items()
    }


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_a_case_from_practice_has_its_answer(case: dict[str, Any]) -> None:
    """The outcome, and the words that matter in what is said, to do, ruled and cautioned."""
    reply = run("type-for-load", plain(case["request"]))

    assert reply["kind"] == "result", reply
    assert reply["outcome"] == case["outcome"], [f["says"] for f in reply["findings"]]
    assert case.get("says", "") in " ".join(one["says"] for one in reply["findings"])
    assert case.get("do_next", "") in " ".join(one.get("do_next", "") for one in reply["findings"])
    assert case.get("caution", "") in " ".join(reply["cautions"])
    assert case.get("rule", "") in " ".join(reply["answer"]["rules"])
    assert case.get("island", "") in reply["answer"].get("as_an_island", "")
