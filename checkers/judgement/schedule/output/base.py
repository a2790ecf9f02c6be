"""What every form of output has in common.

A file is a head, the rows in order, and a tail. The head can only be written when all rows are
known, and still stands first: whoever writes the file keeps the rows until then.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Protocol

from checkers.domain.verdicts import Outcome
from checkers.judgement.device.still_to_test import pass_so_far
from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.schedule import Schedule
from checkers.wording.book import part

OUTCOMES: Mapping[str, str] = {
    Outcome.PASS: "schedule.outcome-pass",
    Outcome.FAIL: "schedule.outcome-fail",
    Outcome.BORDERLINE: "schedule.outcome-borderline",
    Outcome.CANNOT_SAY: "schedule.outcome-cannot-say",
}


class Output(Protocol):
    """A form of output: its parts, each as text."""

    def row(self, row: Row) -> str:
        """Return one row."""

    def head(self, reply: Mapping[str, Any], schedule: Schedule) -> str:
        """Return what stands before the rows."""

    def tail(self, reply: Mapping[str, Any], schedule: Schedule) -> str:
        """Return what stands after the rows."""


def in_words(outcome: str) -> str:
    """Return an outcome as it is written out."""
    return part(OUTCOMES[outcome])


def outcome_words(row: Row) -> str:
    """Return a row's outcome as it is written out; empty where nothing is judged."""
    if row.passes_so_far:
        return pass_so_far(row.missing)
    return "" if row.outcome is None else in_words(row.outcome)


def whole_in_words(reply: Mapping[str, Any]) -> str:
    """Return what a schedule comes to as it is written out: a pass never alone."""
    missing = [one["words"] for one in reply["still_to_do"]]
    if reply["outcome"] == Outcome.PASS and missing:
        return pass_so_far(missing)
    return in_words(reply["outcome"])
