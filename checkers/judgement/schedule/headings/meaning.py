"""What a column of a schedule holds, and the words that say so."""

from __future__ import annotations

from dataclasses import dataclass, replace

from checkers.domain.device.readings import Test
from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.judgement.schedule.headings.vocabulary import VOCABULARY
from checkers.wording.book import part
from checkers.wording.reading_names import spoken

READING = "reading"
UNKNOWN = "unknown"
NOT_USED = frozenset({"ignored", UNKNOWN})
PROPERTIES = frozenset(
    {"type", "plain_type", "rated", "rating", "delay", "form", "made_to", "day"}
    | {"loads", "dc_residual", "standing_leakage", "seen_to_open"}
)
ONE_A_ROW = frozenset({"test", "multiple", "test_current", "phase", "waveform", "unit", "value"})


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a column holds: a key of the headings' table, or readings of a test.

    For readings: the test (empty where not told), the multiples and start phases in
    the order of the figures in a cell, the test current [mA], the waveform, and the
    unit of a bare figure. `asks` is what must be answered before the column is used.
    Of a no-trip test: whether the heading names it so, and what yes was said to mean.
    """

    kind: str
    test: str = ""
    multiples: tuple[float, ...] = ()
    phases: tuple[str, ...] = ()
    current: float | None = None
    waveform: str = ""
    unit: str = ""
    asks: str = ""
    names_no_trip: bool = False
    yes: str = ""

    @property
    def is_no_trip(self) -> bool:
        """Whether every reading of the column is of a test in which the device is to hold."""
        half = self.test == Test.TRIP_TIME and self.multiples == (HALF,)
        return self.is_reading and (half or self.test == Test.NO_TRIP)

    @property
    def answers(self) -> list[str]:
        """The two meanings, in words, that say what yes, OK or a tick means in such a column."""
        return [str(replace(self, names_no_trip=True, yes=one)) for one in (HELD, TRIPPED)]

    @property
    def is_reading(self) -> bool:
        """Whether the column holds readings of a test that its heading names."""
        return self.kind == READING

    @property
    def holds_readings(self) -> bool:
        """Whether the column holds readings, of a test that is named here or in another column."""
        return self.kind in (READING, "value")

    @property
    def is_sure(self) -> bool:
        """Whether the column is used as it stands."""
        return not self.asks

    @property
    def weight(self) -> int:
        """How much this meaning says that a row of cells is a row of headings.

        A heading of readings weighs more the more of the test it tells.
        """
        if self.kind == UNKNOWN or not self.is_sure:
            return 0
        if not self.is_reading:
            return 2
        return 1 + bool(self.test) + self.tells_level + bool(self.unit)

    def with_unit(self, unit: str) -> Meaning:
        """Return the same meaning with a unit for bare figures."""
        return replace(self, unit=unit)

    @property
    def tells_level(self) -> bool:
        """Whether the test current is known, or the test needs none."""
        needs_none = self.test in (Test.RAMP, Test.BUTTON)
        return needs_none or bool(self.multiples) or self.current is not None

    def __str__(self) -> str:
        """The meaning in words; headings.meaning_of reads them back."""
        parts = self._test_words() if self.is_reading else [column_name(self.kind)]
        words = " ".join(part for part in (*parts, self._unit_words()) if part)
        return f"{words}, yes means {self.yes}" if self.yes else words

    def _test_words(self) -> list[str]:
        levels = "/".join(f"×{format_number(one)}" for one in self.multiples)
        phases = "/".join(phase_words(one) for one in self.phases)
        current = "" if self.current is None else f"at {format_quantity(self.current, 'mA')}"
        return [spoken(self.test) or "reading", levels, current, phases, self.waveform]

    def _unit_words(self) -> str:
        return f"({self.unit})" if self.unit else ""


def phase_words(phase: str) -> str:
    """Return a start phase or polarity as it is shown: 180°, (+)."""
    return f"{phase}°" if phase.isdecimal() else f"({phase})"


def column_name(kind: str) -> str:
    """Return what a kind of column is called."""
    return VOCABULARY.names.get(kind) or part("schedule.column-not-known")


def test_of(multiples: tuple[float, ...]) -> str:
    """Return the test that a heading with multiples and no other word means."""
    return Test.NO_TRIP.value if multiples == (HALF,) else Test.TRIP_TIME.value


HALF = 0.5
HELD, TRIPPED = "held", "tripped"
