"""One row of a published limit table, and the table it stands in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from checkers.domain.limits.conditions import Conditions, Interval, Situation, applies
from checkers.domain.sources.documents import Citation, cite

# What a table may limit, and the unit its figures have inside.
MEASURES: Mapping[str, str] = {
    "trip-time": "ms",
    "no-trip-time": "ms",
    "operating-current": "mA",
    "standing-dc": "mA",
    "standing-leakage": "mA",
    "disconnection-time": "ms",
    "disconnection-time-at-rating": "ms",
    "operating-uncertainty": "share",
    "selectivity-ratio": "ratio",
    "touch-voltage": "V",
}


@dataclass(frozen=True, slots=True)
class Formula:
    """A time limit (numerator / current) ** exponent seconds, over a range of currents."""

    numerator: float
    exponent: float
    over: Interval

    def time(self, current: float) -> float | None:
        """Return the limit [ms] at a current [mA], or None outside the formula's range."""
        if not self.over.holds(current):
            return None
        return 1000.0 * float((self.numerator / current) ** self.exponent)


@dataclass(frozen=True, slots=True)
class LimitEnd:
    """One end of a limit: a fixed part plus shares of the rating and of the set delay."""

    fixed: float | None = None
    of_rated: float | None = None
    of_delay: float | None = None

    def __bool__(self) -> bool:
        return (self.fixed, self.of_rated, self.of_delay) != (None, None, None)

    def value(self, rated: float | None, set_delay: float | None) -> float | None:
        """Return the figure in the table's unit, or None where something needed is unknown."""
        if not self:
            return None
        total = self.fixed or 0.0
        for share, whole in ((self.of_rated, rated), (self.of_delay, set_delay)):
            if share is not None:
                if whole is None:
                    return None
                total += share * whole
        return round(total, 9)


@dataclass(frozen=True, slots=True, eq=False)
class Row:
    """One row: when it applies, its limits, where it stands and from which day to which.

    `never` marks a current at which the device must not operate however long it flows.
    `undeclared` marks a row for which the document gives no figure, on purpose.
    """

    table: str
    number: int
    measures: str
    when: Conditions
    most: LimitEnd
    least: LimitEnd
    formula: tuple[Formula, ...]
    never: bool
    undeclared: bool
    document: str
    edition: str
    clause: str
    evidence: str
    from_day: date | None
    until_day: date | None
    note: str

    @property
    def unit(self) -> str:
        """The unit of every figure of this row: ms, mA, V, or a bare ratio or share."""
        return MEASURES[self.measures]

    @property
    def citation(self) -> Citation:
        """The document, edition, clause and evidence behind this row."""
        return cite(self.document, self.clause, self.evidence, self.edition)

    @property
    def needs_rating(self) -> bool:
        """Tell whether when the row applies, or what it asks, depends on the rated current."""
        shares = (self.most.of_rated, self.least.of_rated, self.when.multiple)
        return shares != (None, None, None) or "rated_residual_current" in self.when.ranges

    def level(self, rated: float | None) -> float | None:
        """Return the test current [mA] of this row for a rated residual current [mA]."""
        return self.when.level(rated)

    def at_most(
        self,
        rated: float | None = None,
        set_delay: float | None = None,
        current: float | None = None,
    ) -> float | None:
        """Return the upper limit in the row's unit, or None if there is none or it is unknown.

        Inputs: rated residual current [mA], set delay [ms], test current [mA] (for a formula).
        """
        if self.formula:
            return None if current is None else self._formula_time(current)
        return self.most.value(rated, set_delay)

    def _formula_time(self, current: float) -> float | None:
        """Return the limit [ms] of the piece of the formula that holds at a current [mA]."""
        times = (piece.time(current) for piece in self.formula)
        return next((time for time in times if time is not None), None)

    def at_least(self, rated: float | None = None, set_delay: float | None = None) -> float | None:
        """Return the lower limit in the row's unit, or None if there is none or it is unknown."""
        return self.least.value(rated, set_delay)

    def in_force(self, day: date) -> bool:
        """Tell whether the row holds on a day: from its first day, until the day it ends."""
        started = self.from_day is None or self.from_day <= day
        return started and (self.until_day is None or day < self.until_day)

    def answers(self, situation: Situation, day: date) -> bool:
        """Tell whether the row holds on a day for what is asked."""
        return self.in_force(day) and applies(self.when, situation)


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """One published table. `assumed`: it applies also to a device of unknown standard."""

    key: str
    title: str
    document: str
    edition: str
    clause: str
    measures: str
    applies: Conditions
    assumed: bool
    note: str
    rows: tuple[Row, ...]


def citations(*rows: Row | None) -> tuple[Citation, ...]:
    """Return the citations of some rows, each once."""
    return tuple(dict.fromkeys(row.citation for row in rows if row is not None))
