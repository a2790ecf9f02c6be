"""Which rows a person should see first: the order of danger.

The order is common practice, with no published source: a device that does not trip
protects nobody; one that trips too easily is a nuisance first.
"""

from __future__ import annotations

import heapq

from checkers.domain.measured import MORE, parse_measured
from checkers.domain.quantities import NotAQuantity
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.schedule.entry import RowKind
from checkers.judgement.schedule.row import NEEDS_A_PERSON, Row

Key = tuple[int, int, float, int]
MOST_KEPT = 200
DID_NOT_TRIP, TOO_LATE, BLINDED, BUTTON, TOO_EASILY, OTHER = range(6)


def danger_of(row: Row) -> Key:
    """Return a key that sorts rows by danger, the worst first; equal ones by line."""
    assert row.outcome is not None  # noqa: S101  # only rows with an outcome are sorted
    bad = [one for one in row.findings if one.outcome is row.outcome]
    worst = min((_finding_key(one) for one in bad), default=(OTHER, 0.0))
    kind, ratio = worst if row.kind is not RowKind.NOT_TESTED else (DID_NOT_TRIP, 0.0)
    return list(Outcome).index(row.outcome), kind, -ratio, row.line


def _finding_key(finding: Finding) -> tuple[int, float]:
    """Return how bad a finding is of its kind, and by how many times it is over its limit."""
    if finding.judges is Judges.FITNESS_FOR_DC:
        return BLINDED, 0.0
    if finding.judges is Judges.FUNCTION:
        return BUTTON, 0.0
    if finding.about.startswith(("trip-time", "ramp")):
        return _of_trip(finding)
    return (TOO_EASILY, 0.0) if finding.about.startswith("no-trip") else (OTHER, 0.0)


def _of_trip(finding: Finding) -> tuple[int, float]:
    if finding.margin is None:
        held = finding.measured == "no trip" or MORE.match(finding.measured)
        return (DID_NOT_TRIP, 0.0) if held else (OTHER, 0.0)
    try:
        value = parse_measured(finding.measured, "trip_time").value
    except NotAQuantity:
        return OTHER, 0.0
    limit = value + finding.margin
    over = limit > 0 and finding.limit.find("≤") >= 0
    if not over and _below(finding, value):
        return TOO_EASILY, 0.0
    return TOO_LATE, value / limit if limit > 0 else 0.0


def _below(finding: Finding, value: float) -> bool:
    """Tell whether a figure lies below a band rather than above it."""
    low = finding.limit.partition(" to ")[0].removeprefix("≥ ")
    try:
        return value < float(low)
    except ValueError:
        return False


class WorstFirst:
    """Keeps the most dangerous rows of any number of them, in bounded memory."""

    def __init__(self, most: int = MOST_KEPT) -> None:
        """Begin empty; at most so many rows are kept."""
        self.count = 0
        self._most = most
        self._heap: list[tuple[tuple[float, ...], Row]] = []

    def add(self, row: Row) -> None:
        """Take a row in, if it needs a person and is among the worst."""
        if row.outcome not in NEEDS_A_PERSON or row.kind is RowKind.SAME_DEVICE:
            return
        self.count += 1
        item = (tuple(-part for part in danger_of(row)), row)
        if len(self._heap) < self._most:
            heapq.heappush(self._heap, item)
        elif item[0] > self._heap[0][0]:
            heapq.heapreplace(self._heap, item)

    def drop(self, line: int) -> None:
        """Leave out the row of a line that a later row has answered."""
        left = [item for item in self._heap if item[1].line != line]
        self.count -= len(self._heap) - len(left)
        self._heap = left
        heapq.heapify(self._heap)

    @property
    def rows(self) -> list[Row]:
        """The rows kept, the most dangerous first."""
        return [row for _, row in sorted(self._heap, key=lambda item: item[0], reverse=True)]
