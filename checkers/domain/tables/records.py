"""Read the project's TOML files strictly: every key known, every value of its kind.

A Record wraps one TOML table. Each value is taken once, by name; `finish` then
refuses what nobody took. Every complaint is a DataError with file and row.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any

from checkers.domain.errors import DataError
from checkers.domain.tables.glossary import UNITS

PLAIN_FIGURE = re.compile(r"\d{1,6}(\.\d{1,6})?")


def amount(text: object, kind: str) -> float:
    """Return "300 ms" as 300.0: a figure and a unit of a kind, in the unit computed in.

    Raises ValueError, with words that say what was expected.
    """
    number, _, symbol = str(text).partition(" ")
    unit = UNITS.get(symbol)
    if unit is None or unit.kind != kind:
        known = ", ".join(one.symbol for one in UNITS.values() if one.kind == kind)
        raise ValueError(f"{text!r} needs a unit of {kind}: one of {known}")
    if not PLAIN_FIGURE.fullmatch(number):
        raise ValueError(f"{text!r} has no plain figure before its unit")
    return round(float(number) * float(unit.factor), 9)


@dataclass(slots=True)
class Record:
    """One TOML table being read: its values, and where it stands, for the error text."""

    file: str
    row: str
    values: Any
    taken: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        if not isinstance(self.values, dict):
            raise self.error("should be a table of keys and values")

    def error(self, problem: str) -> DataError:
        """Return the error that names this file and row."""
        return DataError(self.file, self.row, problem)

    def value(self, key: str) -> Any:
        """Return the raw value of a key, or None where it is absent."""
        self.taken.add(key)
        return self.values.get(key)

    def text(self, key: str, default: str | None = None) -> str:
        """Return a text value; without a default the key must be there and not be empty."""
        value = self.value(key)
        if value is None and default is not None:
            return default
        if not isinstance(value, str) or not value.strip():
            raise self.error(f"needs {key!r} as text")
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        """Return a list of texts, empty where the key is absent."""
        value = self.value(key)
        if value is None:
            return ()
        if not isinstance(value, list) or not all(isinstance(one, str) and one for one in value):
            raise self.error(f"needs {key!r} as a list of texts")
        if len(set(value)) != len(value):
            raise self.error(f"{key!r} names something twice")
        return tuple(value)

    def choice(self, key: str, known: frozenset[str], default: str | None = None) -> str:
        """Return a text that is one of the known words."""
        word = self.text(key, default)
        if word not in known and word != default:
            raise self.error(f"{key!r} is {word!r}, not one of {', '.join(sorted(known))}")
        return word

    def choices(self, key: str, known: frozenset[str]) -> frozenset[str] | None:
        """Return a set of known words, or None where the key is absent."""
        words = self.texts(key)
        for word in words:
            if word not in known:
                raise self.error(f"{key!r} holds {word!r}, not one of {', '.join(sorted(known))}")
        if self.values.get(key) == []:
            raise self.error(f"{key!r} is empty, so the row would never apply")
        return frozenset(words) or None

    def flag(self, key: str, default: bool | None = None) -> bool:
        """Return true or false; without a default the key must be there."""
        value = self.value(key)
        if value is None and default is not None:
            return default
        if not isinstance(value, bool):
            raise self.error(f"needs {key!r} as true or false")
        return value

    def number(self, key: str) -> float | None:
        """Return a bare positive figure (a multiple, an exponent), or None if absent."""
        value = self.value(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int | float) or not 0 <= value < 1e6:
            raise self.error(f"needs {key!r} as a bare figure, not {value!r}")
        return float(value)

    def amount(self, key: str, kind: str) -> float | None:
        """Return a figure with its unit in canonical units, or None if absent."""
        value = self.value(key)
        if value is None:
            return None
        try:
            return amount(value, kind)
        except ValueError as problem:
            raise self.error(f"{key!r}: {problem}") from None

    def day(self, key: str) -> date | None:
        """Return a TOML local date, or None if absent."""
        value = self.value(key)
        if value is not None and (not isinstance(value, date) or isinstance(value, datetime)):
            raise self.error(f"needs {key!r} as a date such as 2022-03-28")
        return value

    def days(self) -> tuple[date | None, date | None]:
        """Return the half-open span of days `from` and `until`."""
        start, end = self.day("from"), self.day("until")
        if start and end and end <= start:
            raise self.error(f"runs backwards: from {start} until {end}")
        return start, end

    def record(self, key: str) -> Record | None:
        """Return a table inside this one as a record, or None if absent."""
        value = self.value(key)
        return None if value is None else Record(self.file, f"{self.row} {key}".strip(), value)

    def tables(self, key: str) -> dict[str, Record]:
        """Return the tables inside a table that must be there, each named by both keys."""
        value = self.value(key)
        if not isinstance(value, dict):
            raise self.error(f"needs a table {key!r}")
        return {name: Record(self.file, f"{key} {name}", one) for name, one in value.items()}

    def records(self, key: str) -> Iterator[Record]:
        """Yield the records of an array of tables, each named by key and place."""
        value = self.value(key)
        if value is not None and not isinstance(value, list):
            raise self.error(f"needs {key!r} as an array of tables [[{key}]]")
        for place, one in enumerate(value or [], start=1):
            yield Record(self.file, f"{key} {place}", one)

    def finish(self) -> None:
        """Refuse every key that was not taken."""
        unknown = sorted(set(self.values) - self.taken)
        if unknown:
            raise self.error(f"unknown key {', '.join(map(repr, unknown))}")
