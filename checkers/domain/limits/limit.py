"""One limit: what a value may be, whose limit it is, and where it stands."""

from __future__ import annotations

from dataclasses import dataclass, field

from checkers.domain.limits.rows import Row
from checkers.domain.quantities.ranges import range_in_words
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Judges


@dataclass(frozen=True, slots=True)
class Limit:
    """What a value may be, in the unit named: at least, at most, or both.

    `rows` are those of the tables that it comes from, `asked_by` what asks for it besides, such
    as the clause of a code on a test. Two limits are equal where their figures are.
    """

    unit: str
    at_least: float | None = None
    at_most: float | None = None
    rows: tuple[Row, ...] = field(default=(), compare=False)
    judges: Judges = field(default=Judges.DEVICE_STANDARD, compare=False)
    asked_by: tuple[Citation, ...] = field(default=(), compare=False)

    def __str__(self) -> str:
        """The limit as it is shown everywhere: ≤ 300 ms, 130 ms to 500 ms, ≥ 15 mA."""
        return range_in_words(self.at_least, self.at_most, self.unit)

    @property
    def is_set(self) -> bool:
        """Whether there is any figure to meet."""
        return (self.at_least, self.at_most) != (None, None)

    @property
    def sources(self) -> tuple[Citation, ...]:
        """Where the limit stands, each place once."""
        return tuple(dict.fromkeys((*self.asked_by, *(row.citation for row in self.rows))))
