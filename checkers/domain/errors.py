"""What can go wrong, apart from a bad device: a bad question, and bad data.

A bad verdict is a value (see verdicts), a bad question is an exception for the
person who asked, and bad data is an exception for the person who builds.
"""

from __future__ import annotations

from collections.abc import Mapping
from reprlib import Repr

SHOWN = 80  # characters of a refused value: enough to know it again
LONGEST_NUMBER = 2**256


def _limited() -> Repr:
    shown = Repr()
    shown.maxlevel = 3
    shown.maxdict = shown.maxlist = shown.maxtuple = 4
    shown.maxother = shown.maxlong = SHOWN
    return shown


_LIMITED = _limited()


class InvalidRequest(Exception):
    """Raised when a request cannot be read; holds a message for every bad field."""

    def __init__(self, errors: Mapping[str, str]) -> None:
        self.errors = dict(errors)
        super().__init__("; ".join(f"{field}: {message}" for field, message in errors.items()))


class DataError(Exception):
    """Raised when a data file breaks its own rules; names the file and the row."""

    def __init__(self, file: str, row: str, problem: str) -> None:
        self.file = file
        self.row = row
        self.problem = problem
        super().__init__(f"{file}, {row}: {problem}" if row else f"{file}: {problem}")


def quoted(value: object) -> str:
    """Return a refused value as it is shown, in quotes where it is text, cut where it is long."""
    if isinstance(value, str):
        return repr(cut(value))
    if isinstance(value, int) and abs(value) > LONGEST_NUMBER:
        return "a number of very many digits"
    return cut(_LIMITED.repr(value))


def cut(text: str) -> str:
    """Return a text as it is, or its beginning where it is long."""
    return text if len(text) <= SHOWN else f"{text[: SHOWN - 1]}…"
