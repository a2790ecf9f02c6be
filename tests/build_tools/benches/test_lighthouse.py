"""Scores are read from Lighthouse's reports as they stand, and their median is taken."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from build_tools.benches import lighthouse
from build_tools.benches.budgets import read_budgets
from build_tools.benches.page_audits.audits import CATEGORIES, Verdict, read_report
from build_tools.machine.problems import Problem


def report(folder: Path, **scores: float | None) -> Path:
    """Write a report of one audit a category, with the parts of a report that are read."""
    audits = {
        name: {"id": name, "score": one, "displayValue": "9 s"} for name, one in scores.items()
    }
    parts = {
        name: {"score": one, "auditRefs": [{"id": name, "weight": 1}]}
        for name, one in scores.items()
    }
    path = folder / "one.report.json"
    path.write_text(json.dumps({"categories": parts, "audits": audits}))
    return path


def test_a_report_gives_its_scores_and_what_was_lost(tmp_path: Path) -> None:
    """Only what is below full marks is told, with its value."""
    scores = {"performance": 0.82, "accessibility": 1.0, "best-practices": 1.0}

    read = read_report(report(tmp_path, **scores))

    assert read.scores == {"performance": 82, "accessibility": 100, "best-practices": 100}
    assert read.lost == {"performance": "82 of 100 9 s"}


def test_a_report_without_a_score_is_no_score(tmp_path: Path) -> None:
    """A page that could not be measured never counts as a good one."""
    broken = {"performance": None, "accessibility": 1.0, "best-practices": 1.0}

    with pytest.raises(Problem, match="no score: performance"):
        read_report(report(tmp_path, **broken))


def test_an_even_number_of_rounds_gets_one_more(monkeypatch: pytest.MonkeyPatch) -> None:
    """The median is then the score of one of the runs."""
    given = iter([70, 100, 90, 100, 80, 100])

    def audit(_address: str, _name: str) -> Verdict:
        return Verdict(dict.fromkeys(CATEGORIES, next(given)), {})

    monkeypatch.setattr(lighthouse, "audit", audit)
    monkeypatch.setattr(lighthouse, "ensure_site", Path)

    found = lighthouse.table(2)

    assert found["front page"]["performance"] == 80
    assert found["front page"]["runs"]["performance"] == [70, 90, 80]
    assert found["readings"]["performance"] == 100


def test_every_score_has_a_budget() -> None:
    """A category that is not held against one would prove nothing."""
    page = {**dict.fromkeys(CATEGORIES, 100), "lost": {}}

    assert {one.name for one in lighthouse.measurements({"a": page})} <= set(read_budgets())
