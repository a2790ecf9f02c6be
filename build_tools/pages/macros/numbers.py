"""Numbers within a sentence, taken from the tables, each a link to where it stands.

`<!-- show limit trip-time type=A rated=30mA multiple=1 waveform=ac -->` is "at most 300 ms";
`only=most` leaves the bare figure. In place of what is measured, a table's key may stand.
`<!-- show known earth_fault_in_tn mA -->` is a figure that stands in no table.
"""

from __future__ import annotations

from typing import Any

from build_tools.files.identity import day_of_sources
from build_tools.pages.rendering import html
from checkers.domain.limits.rows import MEASURES, Row
from checkers.domain.limits.tables import rows, rows_in
from checkers.domain.limits.words import amount_in_words
from checkers.domain.quantities.quantity import parse_quantity
from checkers.domain.quantities.ranges import IN_SENTENCES, between
from checkers.domain.sources.constants import CONSTANTS

AMOUNTS = {
    "rated": "rated_residual_current",
    "current": "residual_current",
    "dc_residual": "dc_residual",
    "set_delay": "delay",
    "voltage": "line_voltage",
}
TIMED = {"form": "rccb", "delay": "none"}  # what a sentence means where it names no other
BANDED = {"form": "rccb"}


class NoSingleNumberError(ValueError):
    """Raised where a sentence asks for a number and the tables hold none, or several."""


def limit_macro(words: str, root: str) -> str:
    """Show one limit of the tables as words within a sentence, linked to its table.

    Raises NoSingleNumberError, KeyError for an unknown table, TypeError for an unknown condition.
    """
    which, *pairs = words.split()
    asked: dict[str, Any] = dict(pair.split("=", 1) for pair in pairs)
    only = asked.pop("only", "")
    found = _found(which, asked)
    rated = _amount("rated", asked["rated"]) if "rated" in asked else None
    said = {_words(row, rated, asked.get("current"), only): row for row in found}
    if len(said) != 1:
        raise NoSingleNumberError(f"{words}: {' / '.join(said) or 'nothing found'}")
    text, row = said.popitem()
    return _number(text, f"{root}limits/{row.document}/", row.citation.words)


def _found(which: str, asked: dict[str, Any]) -> tuple[Row, ...]:
    on = day_of_sources()
    conditions = {key: _value(key, text) for key, text in asked.items()}
    if which not in MEASURES:
        return rows_in(which, on=on, **conditions)
    usual = TIMED if which.endswith("-time") else BANDED
    return rows(which, on=on, **{**usual, **conditions})


def _value(key: str, text: str) -> str | float:
    if key == "multiple":
        return float(text)
    return _amount(key, text) if key in AMOUNTS else text


def _amount(key: str, text: str) -> float:
    return parse_quantity(text, AMOUNTS[key])


def _words(row: Row, rated: float | None, current: str | None, only: str) -> str:
    if row.never:
        return "no operation at all"
    at = None if current is None else _amount("current", current)
    ends = {"least": row.at_least(rated), "most": row.at_most(rated, current=at)}
    said = {key: amount_in_words(round(end, 1), row.unit) for key, end in ends.items() if end}
    if only:
        return said.get(only, "no figure")
    return between(said.get("least", ""), said.get("most", ""), IN_SENTENCES) or "no figure"


def known_macro(words: str, root: str) -> str:
    """Show a figure that stands in no table, by its key and its unit. Raises KeyError."""
    key, unit = words.split()
    known = CONSTANTS[key]
    return _number(amount_in_words(known.value, unit), f"{root}sources/", known.citation.words)


def _number(text: str, leads: str, cited: str) -> str:
    return html("macros/number.html", text=text, leads=leads, cited=cited)
