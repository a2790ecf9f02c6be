"""What a page shows for an example in its bar."""

from __future__ import annotations

from checkers import run
from checkers.command_line.printing import HEADLINES
from checkers.domain.checker import Checker, Example

PLAN = "plan"


def shown(checker: Checker, example: Example) -> tuple[str, str]:
    """Return the outcome that the bar has, and its word; a plan alone judges nothing."""
    findings = run(checker.slug, example.request)["findings"]
    if [one["about"] for one in findings] == ["what the plan holds"]:
        return PLAN, PLAN
    return example.outcome, HEADLINES[example.outcome]
