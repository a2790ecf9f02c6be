"""What an instrument showed, as a person writes it down: a figure, a bound or a word."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from checkers.domain.errors import quoted
from checkers.domain.quantities.quantity import format_quantity, parse_unit
from checkers.domain.quantities.typed_numbers import (
    CouldMeanTwoThings,
    NotAQuantity,
    is_bare,
    split_number,
    tidy,
)
from checkers.domain.tables.glossary import QUANTITIES, UNITS, Quantity


class Said(StrEnum):
    """What kind of thing was written down."""

    FIGURE = "figure"
    MORE_THAN = "more than"
    LESS_THAN = "less than"
    NO_TRIP = "no trip"
    TRIPPED = "tripped"
    OPERATES = "operates"
    DOES_NOT_OPERATE = "does not operate"
    NO_RESULT = "no result"
    NOT_TESTED = "not tested"
    UNCLEAR = "unclear"


SHOWS_NOTHING = frozenset({Said.NO_RESULT, Said.NOT_TESTED, Said.UNCLEAR})
WORDS: dict[Said, frozenset[str]] = {
    Said.NO_TRIP: frozenset(
        {"no trip", "did not trip", "didn't trip", "does not trip", "no-trip", "not tripped"}
    )
    | frozenset(
        {"no operation", "did not operate within the test", "held", "no tripping", "notrip"}
    ),
    Said.TRIPPED: frozenset({"tripped", "trips", "trip", "opened", "it tripped"}),
    Said.OPERATES: frozenset(
        {"operates", "operated", "ok", "works", "yes", "pass", "passed", "satisfactory", "✓"}
    ),
    Said.DOES_NOT_OPERATE: frozenset(
        {"does not operate", "did not operate", "dead", "fails", "fail", "failed", "no", "nothing"}
    )
    | frozenset({"does not work", "button dead", "✗", "unsatisfactory"})
    | frozenset({"no action", "does nothing", "no response"}),
    Said.NO_RESULT: frozenset(
        {"trp", "limit", "lim", "aborted", "abort", "error", "err", "-", "--", "---", "n/a", "na"}
    )
    | frozenset({"no result", "test not completed", "not completed"}),
    Said.NOT_TESTED: frozenset({"n/t", "nt", "n.t", "not tested"}),
}
MORE = re.compile(r"(?:>=?|≥|greater than|more than|over|above)\s*")
LESS = re.compile(r"(?:<=?|≤|less than|under|below)\s*")
NO_TRIP_BY = re.compile(
    r"(?:no[ -]?trip|no tripping|not tripped|did(?: not|n't) trip|does not trip|held) "
    r"(?:by|up to|to|at|until|within|in) "
)
TWO_FIGURES = re.compile(
    r"\d\s*(?:/|;|\||\band\b|&|,\s)\s*\d|\d\d\s+\d|\d\s+\d+[.,]\d|\d\s+\d{1,2}\b"
)


@dataclass(frozen=True, slots=True)
class Measured:
    """A reading: what was said, and for a figure or a bound its value [ms or mA] and unit.

    `bare` is true where no unit was written, so that the field's own unit was taken.
    `question` is what to ask back where the text could mean two things.
    """

    said: Said
    value: float = 0.0
    unit: str = ""
    bare: bool = False
    typed: str = ""
    question: str = ""

    @property
    def is_number(self) -> bool:
        """Whether there is a value to compare."""
        return self.said in (Said.FIGURE, Said.MORE_THAN, Said.LESS_THAN)

    def __str__(self) -> str:
        """The reading as it is shown."""
        sign = {Said.MORE_THAN: "> ", Said.LESS_THAN: "< "}.get(self.said, "")
        return (
            sign + format_quantity(self.value, self.unit, digits=6)
            if self.is_number
            else self.said.value
        )


@lru_cache(maxsize=2048)
def parse_measured(text: str, expected: Quantity | str) -> Measured:
    """Parse what was written down for a reading.

    Inputs: the text; the quantity expected, which gives the unit of a bare number.
    Result: a Measured; a time where a current is expected (and the other way) is
    kept as written, with its own unit, so that the mix-up can be asked about, and
    a text that could mean two things comes back UNCLEAR with the question to ask.
    Raises NotAQuantity for text that is neither word nor number, and for values
    beyond belief, which includes NaN, infinity and negatives.
    """
    wanted = QUANTITIES[expected] if isinstance(expected, str) else expected
    plain = _without_full_stop(text)
    for said, words in WORDS.items():
        if plain in words:
            return Measured(said, typed=text)
    said, figure = _sign(plain)
    if TWO_FIGURES.search(figure):
        question = f"{quoted(text.strip())} holds two figures: which one belongs to this test?"
        return Measured(Said.UNCLEAR, typed=text, question=question)
    try:
        number, rest = split_number(figure)
    except CouldMeanTwoThings as two:
        return Measured(Said.UNCLEAR, typed=text, question=str(two))
    unit = parse_unit(rest, ("time", "current")) if rest else UNITS[wanted.unit]
    value = float(number * unit.factor)
    _refuse_the_unbelievable(text, value, unit.kind, bare=not rest)
    return Measured(said, value, _computed_unit(unit.kind), bare=not rest, typed=text)


def with_unit(text: str, unit: str) -> str:
    """Return a figure, or a bound, that has no unit with this one; any other text unchanged."""
    _, figure = _sign(_without_full_stop(text))
    if not unit or not is_bare(figure):
        return text
    return f"{text.strip().removesuffix('.').rstrip()} {unit}"


def _without_full_stop(text: str) -> str:
    """Return a tidy text without the full stop that may end it; two are no full stop."""
    return tidy(text).removesuffix(".").rstrip()


def _sign(plain: str) -> tuple[Said, str]:
    for pattern, said in (
        (MORE, Said.MORE_THAN),
        (NO_TRIP_BY, Said.MORE_THAN),
        (LESS, Said.LESS_THAN),
    ):
        match = pattern.match(plain)
        if match:
            return said, plain[match.end() :]
    return Said.FIGURE, plain


def _refuse_the_unbelievable(text: str, value: float, kind: str, *, bare: bool) -> None:
    quantity = QUANTITIES["trip_time" if kind == "time" else "trip_current"]
    if quantity.least <= value <= quantity.most:
        return
    hint = "; write its unit (s or A?)" if bare and 0 < value < quantity.least else ""
    raise NotAQuantity(f"{quoted(text.strip())} is outside {quantity.range_text}{hint}")


def _computed_unit(kind: str) -> str:
    return "ms" if kind == "time" else "mA"
