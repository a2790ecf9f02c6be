"""Which builds judge otherwise than those before them, and what was wrong with the verdicts."""

from __future__ import annotations

import tomllib
from datetime import date
from functools import cache
from pathlib import Path
from typing import NamedTuple

from checkers.domain.codes.registry import CODES

FILE = Path(__file__).with_suffix(".toml")


class Correction(NamedTuple):
    """The day from which builds judge otherwise, what was wrong before, and for which codes.

    `codes` are the names of local codes; there are none where it was wrong for every one.
    """

    on: date
    wrong: tuple[str, ...]
    codes: tuple[str, ...]


@cache
def corrections() -> tuple[Correction, ...]:
    """Return every correction, the newest first."""
    listed = tomllib.loads(FILE.read_text(encoding="utf-8"))["correction"]
    return tuple(
        Correction(
            one["on"], tuple(one["wrong"]), tuple(CODES[x].name for x in one.get("codes", ()))
        )
        for one in listed
    )


def corrected_days() -> list[str]:
    """Return the days of the corrections that this build holds, as 2026-12-01."""
    return list(dict.fromkeys(one.on.isoformat() for one in corrections()))
