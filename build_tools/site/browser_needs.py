"""Which browsers run the checkers: what they need, and the first versions that have it."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path

NEEDS = Path(__file__).with_suffix(".toml")
MAKERS = ("chrome", "firefox", "safari")
WORDS = "Chrome or Edge {chrome}, Firefox {firefox}, Safari or iOS {safari}"


@cache
def needs() -> dict[str, dict[str, str]]:
    """Return what the site needs, by its key: name, what for, first version by maker."""
    return tomllib.loads(NEEDS.read_text(encoding="utf-8"))


def old_enough(*purposes: str) -> dict[str, str]:
    """Return the first version of each maker's browser that has all that serves these purposes."""
    wanted = [need for need in needs().values() if need["for"] in purposes]
    return {maker: max((need[maker] for need in wanted), key=_number) for maker in MAKERS}


def in_words(*purposes: str) -> str:
    """Return the same as words: "Chrome or Edge 95, Firefox 114, Safari or iOS 15.4"."""
    return WORDS.format(**old_enough(*purposes))


def _number(version: str) -> tuple[int, ...]:
    return tuple(int(part) for part in version.split("."))
