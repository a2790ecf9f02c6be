"""Cells that a spreadsheet would run as a formula, made harmless.

Source: [1] OWASP, "CSV Injection": cells that begin with = + - @, tab or carriage return.
Full-width forms of the same characters, spaces and invisible characters before them, and a cell
that another delimiter would split off are treated alike.
"""

from __future__ import annotations

import re

from checkers.domain.quantities.typed_numbers import FIGURE

INVISIBLE = r"\s\u00a0\u00ad\u200b-\u200f\u2060\ufeff\x00-\x1f"
RUNS = re.compile(rf"[{INVISIBLE}]*+[=+\-@＝＋－＠﹢﹣﹦﹫]|[\t\r\n]")
# Possessive, and begun only where a stretch begins, so that no cell takes long.
BETWEEN = rf"(?<![,;|{INVISIBLE}])[,;|{INVISIBLE}]++"
BEFORE_WHAT_RUNS = re.compile(BETWEEN + r"(?=[=@＝＠﹦﹫]|[+\-＋－﹢﹣]\s*+[^\s\d.,])")
DELIMITERS = frozenset(",;|\t\r\n")
A_NUMBER_OR_DASHES = re.compile(
    rf"[+-]?\s?{FIGURE}\s?(?:ms|s|mA|A|%|°|°C|V)?|[-+\s]+", re.IGNORECASE
)
AS_TEXT = "'"


def harmless(cell: str) -> str:
    """Return a cell that no spreadsheet runs: a number or a dash stays, the rest is made text."""
    safe = BEFORE_WHAT_RUNS.sub(_set_apart, cell)
    if not RUNS.match(safe):
        return safe
    stays = A_NUMBER_OR_DASHES.fullmatch(safe.strip()) and safe[0] not in "\t\r\n"
    return safe if stays else AS_TEXT + safe


def _set_apart(between: re.Match[str]) -> str:
    """Make text of what another delimiter would split off."""
    text = between.group()
    return text + AS_TEXT if DELIMITERS.intersection(text) else text
