"""Which rows a person should see first: the order of danger.

The order is common practice, with no published source: a device that does not trip
protects nobody; one that trips too easily is a nuisance first.
"""

from __future__ import annotations

import heapq

from checkers.domain.device.readings import Test
from checkers.domain.quantities.measured_value import Said
from checkers.domain.verdicts import Finding, Judges, Numbers, Outcome, Subject
from checkers.judgement.schedule.rows.entry import RowKind
from checkers.judgement.schedule.rows.row import NEEDS_A_PERSON, Row

Key = tuple[int, int, float, int]
MOST_KEPT = 200
DID_NOT_TRIP, TOO_LATE, BLINDED, BUTTON, TOO_EASILY, OTHER = range(6)
OTHER_KEY = (OTHER, 0.0)
MUST_TRIP = frozenset({Test.TRIP_TIME.value, Test.RAMP.value})
STAYED_CLOSED = frozenset({Said.NO_TRIP.value, Said.MORE_THAN.value})
TRIPPED = frozenset({Said.TRIPPED.value, Said.FIGURE.value, Said.LESS_THAN.value})


def danger_of(row: Row) -> Key:
    """Return a key that sorts rows by danger, the worst first; equal ones by line."""
    assert row.outcome is not None  # noqa: S101  # only rows with an outcome are sorted
    bad = [one for one in row.findings if one.outcome is row.outcome]
    keys = map(_finding_key, bad)
    worst = min(keys, key=lambda one: (one[0], -one[1]), default=OTHER_KEY)
    kind, ratio = worst if row.kind is not RowKind.NOT_TESTED else (DID_NOT_TRIP, 0.0)
    return list(Outcome).index(row.outcome), kind, -ratio, row.line


def _finding_key(finding: Finding) -> tuple[int, float]:
    """Return how bad a finding is of its kind, and by how many times it is over its limit."""
    if finding.judges is Judges.FITNESS_FOR_DC:
        return BLINDED, 0.0
    if finding.judges is Judges.FUNCTION:
        return BUTTON, 0.0
    return OTHER_KEY if finding.subject is None else _of_test(finding, finding.subject)


def _of_test(finding: Finding, subject: Subject) -> tuple[int, float]:
    """Return the kind of a finding about a reading: whether it stayed closed, and if not, why."""
    failed = finding.outcome is Outcome.FAIL
    if subject.showed in STAYED_CLOSED:
        missed = subject.test in MUST_TRIP or failed
        return (DID_NOT_TRIP, 0.0) if missed else OTHER_KEY
    if finding.numbers is not None and finding.numbers.value is not None:
        return _of_figure(finding.numbers, finding.numbers.value)
    tripped = subject.showed in TRIPPED and (failed or subject.test == Test.NO_TRIP)
    return (TOO_EASILY, 0.0) if tripped else OTHER_KEY


def _of_figure(numbers: Numbers, value: float) -> tuple[int, float]:
    """Return on which side of its limit a figure lies, or to which end it is nearer."""
    low, high = numbers.at_least, numbers.at_most
    if high is None:
        return OTHER_KEY if low is None else (TOO_EASILY, 0.0)
    if low is not None and 2 * value < low + high:
        return TOO_EASILY, 0.0
    return TOO_LATE, value / high if high > 0 else 0.0


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
