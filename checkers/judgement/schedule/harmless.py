"""Cells that a spreadsheet would run as a formula, made harmless.

Source: [1] OWASP, "CSV Injection": cells that begin with = + - @, tab or carriage return.
Full-width forms of the same characters, spaces and invisible characters before them, and a cell
that another delimiter would split off are treated alike.
"""

from __future__ import annotations

import re

INVISIBLE = r"[\s\u00a0\u00ad\u200b-\u200f\u2060\ufeff\x00-\x1f]*"
RUNS = re.compile(rf"{INVISIBLE}[=+\-@＝＋－＠﹢﹣﹦﹫]|[\t\r\n]")
RUNS_AFTER_ANOTHER_DELIMITER = re.compile(
    rf"(?<=[,;|\t\r\n])({INVISIBLE})(?=[=@＝＠﹦﹫]|[+\-＋－﹢﹣]\s*[^\s\d.,])"
)
A_NUMBER_OR_DASHES = re.compile(
    r"\s*(?:[+-]?\s?\d+(?:[.,]\d+)?\s?(?:ms|s|mA|A|%|°|°C|V)?|[-+\s]+)\s*", re.IGNORECASE
)
AS_TEXT = "'"


def harmless(cell: str) -> str:
    """Return a cell that no spreadsheet runs: a number or a dash stays, the rest is made text."""
    safe = RUNS_AFTER_ANOTHER_DELIMITER.sub(rf"\1{AS_TEXT}", cell)
    if RUNS.match(safe) and not (A_NUMBER_OR_DASHES.fullmatch(safe) and safe[0] not in "\t\r\n"):
        return AS_TEXT + safe
    return safe
