"""Which builds judge otherwise than those before them, and what was wrong with the verdicts."""

from __future__ import annotations

import tomllib
from datetime import date
from functools import cache
from typing import NamedTuple

from build_tools import places
from build_tools.rendering import html

FILE = places.TOOLS / "corrections.toml"


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


def corrections_show(_: str, root: str) -> str:
    """Show what was wrong with earlier verdicts, by day."""
    del root
    return html("shows/corrections.html", corrections=corrections())
