"""Schedules as people write them are read as a careful person reads them."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from checkers.catalogue.schedule import Inputs, schedule_for
from checkers.domain.inputs.parsing import parse_inputs

FILE = Path(__file__).with_name("schedule_notations.toml")
CASES = tomllib.loads(FILE.read_text(encoding="utf-8"))["case"]


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_a_notation_is_read_as_a_careful_person_reads_it(case: dict[str, Any]) -> None:
    """Each line has the outcome and the kind, and the findings the words, that the case names."""
    mapping = [{"column": key, "means": words} for key, words in case.get("mapping", {}).items()]
    request = {"code": "gb", "on": "2026-11-24", "mapping": mapping, **case.get("request", {})}
    schedule = schedule_for(parse_inputs(Inputs, request))

    rows = [*schedule.feed(case["text"]), *schedule.finish()]

    found = {str(row.line): row.outcome.value for row in rows if row.outcome}
    said = " ".join(one.about + " " + one.says for row in rows for one in row.findings)
    assert case["rows"] == found, said
    kinds = {str(row.line): row.kind.value for row in rows}
    assert case.get("kinds", {}).items() <= kinds.items()
    for words in case.get("says", []):
        assert words in said
    assert len(rows) == case["text"].count("\n")
