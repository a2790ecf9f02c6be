"""The checkers, one a file. SLUGS is the only list of them.

A checker is imported when it is first asked for: a phone starts with the one on its page.
"""

from __future__ import annotations

from importlib import import_module
from typing import cast

from checkers.domain.checker import Checker

SLUGS = (
    "readings",
    "test-plan",
    "explain",
    "type-for-load",
    "series",
    "fault-waveform",
    "dc-bias",
    "demonstration",
    "leakage-budget",
    "earth-electrode",
    "over-the-years",
    "schedule",
    "practice",
)

CHECKERS: tuple[Checker, ...]


def checker_for(slug: str) -> Checker:
    """Return the checker of a slug, importing it the first time; raises KeyError where none is."""
    if slug not in SLUGS:
        raise KeyError(slug)
    module = import_module(f"{__name__}.{slug.replace('-', '_')}")
    return cast("Checker", module.CHECKER)


def __getattr__(name: str) -> object:
    if name != "CHECKERS":
        raise AttributeError(name)
    return tuple(checker_for(slug) for slug in SLUGS)
