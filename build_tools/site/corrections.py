"""Which builds judge otherwise than those before them, and what was wrong with the verdicts."""

from __future__ import annotations

import tomllib
from datetime import date
from functools import cache
from pathlib import Path
from typing import NamedTuple

FILE = Path(__file__).with_suffix(".toml")


class Correction(NamedTuple):
    """The day from which builds judge otherwise, and what was wrong before."""

    on: date
    wrong: tuple[str, ...]


@cache
def corrections() -> tuple[Correction, ...]:
    """Return every correction, the newest first."""
    listed = tomllib.loads(FILE.read_text(encoding="utf-8"))["correction"]
    return tuple(Correction(one["on"], tuple(one["wrong"])) for one in listed)


def corrected_days() -> list[str]:
    """Return the days of the corrections that this build holds, as 2026-12-01."""
    return [one.on.isoformat() for one in corrections()]
