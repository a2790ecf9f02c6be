"""Electrodes and leakage from practice get the answer a careful practitioner gives."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from checkers import run

FILE = Path(__file__).with_name("site_work_from_practice.toml")
CASES = tomllib.loads(FILE.read_text(encoding="utf-8"))["case"]


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_a_case_from_practice_has_its_answer(case: dict[str, Any]) -> None:
    """The outcome, the words and the figures are those the case names."""
    reply = run(case["checker"], {"on": "2026-11-24", **case["request"]})

    assert reply["kind"] == "result", reply
    assert case["outcome"] == reply["outcome"], [f["says"] for f in reply["findings"]]
    assert case.get("says", "") in " ".join(finding["says"] for finding in reply["findings"])
    for name, expected in case.get("answer", {}).items():
        assert expected == pytest.approx(reply["answer"][name]["value"], abs=0.005), name
