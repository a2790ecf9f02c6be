"""A request as JSON text, read strictly: nothing in it is swallowed, and nothing makes it crash."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from math import isfinite
from typing import Any

from checkers.domain.errors import InvalidRequest, cut, quoted

MOST_LEVELS = 50
LONGEST_INTEGER = 40
HALF_A_CHARACTER = re.compile(r"[\ud800-\udfff]")
TOO_DEEP = f"is nested deeper than {MOST_LEVELS} levels"
HALF = "holds half a character: a surrogate without its other half"
NOT_FINITE = "is no number: JSON has neither NaN nor infinity"
IN_WHOLE = "request"


class _Fields(dict[str, Any]):
    """An object of JSON that remembers the fields it gives twice, with both values."""

    def __init__(self, pairs: Sequence[tuple[str, Any]]) -> None:
        """Take the fields in their order."""
        super().__init__(pairs)
        self.twice: dict[str, tuple[Any, Any]] = {}
        first: dict[str, Any] = {}
        for name, value in pairs if len(self) < len(pairs) else ():
            if name in first:
                self.twice[name] = first[name], value
            first[name] = value


def read_request(given: str | bytes) -> object:
    """Return the values of a request that is JSON text in UTF-8.

    Raises InvalidRequest, by field, for text that is not JSON, fields given twice, deep
    nesting and halves of characters.
    """
    try:
        text = given.decode("utf-8-sig") if isinstance(given, bytes) else given
        values = json.loads(text, object_pairs_hook=_Fields, parse_int=_integer)
    except RecursionError as bad:
        raise InvalidRequest({IN_WHOLE: TOO_DEEP}) from bad
    except ValueError as bad:
        raise InvalidRequest({IN_WHOLE: "is not JSON in UTF-8"}) from bad
    refuse_unreadable(values)
    return values


def _integer(digits: str) -> int | str:
    """Return a whole number; one of very many digits stays text, for its field to refuse."""
    return int(digits) if len(digits) <= LONGEST_INTEGER else digits


def refuse_unreadable(values: object) -> None:
    """Raise InvalidRequest, by field, for what no field of a request can hold.

    That is a field given twice, nesting without end, half a character, and NaN.
    """
    errors: dict[str, str] = {}
    waiting: list[tuple[str, object, int]] = [("", values, 0)]
    while waiting:
        path, value, level = waiting.pop()
        problem = TOO_DEEP if level > MOST_LEVELS else _problem_with(value)
        if problem:
            errors.setdefault(cut(path) or IN_WHOLE, problem)
        elif isinstance(value, Mapping):
            errors.update(_given_twice(path, value))
            waiting += [(below(path, name), one, level + 1) for name, one in value.items()]
        elif isinstance(value, list | tuple):
            waiting += [(f"{path}[{place}]", one, level + 1) for place, one in enumerate(value)]
    if errors:
        raise InvalidRequest(errors)


def below(path: str, name: object) -> str:
    """Return the path of a field inside another, as messages name it: device.type."""
    shown = f"{name}" or "''"
    return f"{path}.{shown}" if path else shown


def _problem_with(value: object) -> str:
    if isinstance(value, str):
        return HALF if _is_half(value) else ""
    if isinstance(value, Mapping):
        halves = any(isinstance(name, str) and _is_half(name) for name in value)
        return f"has a field whose name {HALF}" if halves else ""
    return NOT_FINITE if isinstance(value, float) and not isfinite(value) else ""


def _is_half(text: str) -> bool:
    return not text.isascii() and HALF_A_CHARACTER.search(text) is not None


def _given_twice(path: str, fields: object) -> Iterator[tuple[str, str]]:
    for name, values in getattr(fields, "twice", {}).items():
        yield cut(below(path, name)), given_twice(*values)


def given_twice(first: object, second: object) -> str:
    """Return what is said of a field that is given twice, with both values."""
    return f"is given twice: {quoted(first)} and {quoted(second)}"
