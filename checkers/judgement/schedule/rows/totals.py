"""What a whole schedule comes to: rows by kind, devices by outcome, and the rate of failures."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from math import sqrt
from statistics import NormalDist

from checkers.domain.verdicts import Outcome, StillToDo, worst
from checkers.judgement.schedule.rows.entry import RowKind
from checkers.judgement.schedule.rows.row import Row

CONFIDENCE = 0.95
JUDGED = (Outcome.PASS, Outcome.BORDERLINE, Outcome.FAIL)
Standing = tuple[Outcome, Sequence[StillToDo]]


def share_interval(count: int, of: int, confidence: float = CONFIDENCE) -> tuple[float, float]:
    """Return the interval of the share that a count out of a number of trials speaks for.

    Inputs: the count; the number of trials, at least 1; the confidence [0 to 1].
    Result: the lower and upper end [0 to 1] of the score interval.
    Assumption: the devices are drawn independently from many alike.
    Source: [1] NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1 (section number
    from memory).
    """
    spread = NormalDist().inv_cdf((1 + confidence) / 2)
    share = count / of
    middle = share + spread**2 / (2 * of)
    half = spread * sqrt(share * (1 - share) / of + spread**2 / (4 * of**2))
    whole = 1 + spread**2 / of
    low = 0.0 if count == 0 else (middle - half) / whole
    high = 1.0 if count == of else (middle + half) / whole
    return low, high


@dataclass(slots=True)
class Totals:
    """Counts of rows and of devices, added to row by row.

    `so_far` are the devices among those that pass of which a required test is still to do;
    `still_to_do` tells of how many of them each test is.
    """

    rows: Counter[RowKind] = field(default_factory=Counter)
    devices: Counter[Outcome] = field(default_factory=Counter)
    not_tested: int = 0
    so_far: int = 0
    still_to_do: Counter[StillToDo] = field(default_factory=Counter)

    def add(self, row: Row) -> None:
        """Count a row; and its device too, where the row is the first of it."""
        self.rows[row.kind] += 1
        if row.kind in (RowKind.DEVICE, RowKind.NOT_TESTED) and row.outcome is not None:
            self._count(row.outcome, row.still_to_do, 1)
            self.not_tested += row.kind is RowKind.NOT_TESTED

    def correct(self, before: Standing, after: Standing) -> None:
        """Move a device that a further row of it showed in another light."""
        self._count(*before, -1)
        self._count(*after, 1)

    def found_tested(self, found: Standing) -> None:
        """Move a device of which an earlier row held no reading."""
        self.not_tested -= 1
        self.correct((Outcome.CANNOT_SAY, ()), found)

    def _count(self, outcome: Outcome, missing: Sequence[StillToDo], by: int) -> None:
        self.devices[outcome] += by
        if outcome is Outcome.PASS and missing:
            self.so_far += by
            self.still_to_do.update(dict.fromkeys(missing, by))

    @property
    def judged(self) -> int:
        """How many devices were judged: those that pass, fail or are borderline."""
        return sum(self.devices[outcome] for outcome in JUDGED)

    @property
    def outcome(self) -> Outcome:
        """The worst that is known of any device; a row that was not read leaves it open."""
        found = [outcome for outcome in Outcome if self.devices[outcome]]
        return worst([*found, Outcome.CANNOT_SAY] if self.rows_not_read else found)

    @property
    def rows_not_read(self) -> int:
        """How many rows could not be read."""
        return self.rows[RowKind.NOT_READ]

    @property
    def failure_rate(self) -> tuple[float, float, float] | None:
        """The share of judged devices that fail, with its interval; None where none was judged."""
        if not self.judged:
            return None
        failed = self.devices[Outcome.FAIL]
        return failed / self.judged, *share_interval(failed, self.judged)
