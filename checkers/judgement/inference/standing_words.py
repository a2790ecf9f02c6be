"""How it is said that something is open before a device may stay."""

from __future__ import annotations

from collections.abc import Iterable

from checkers.judgement.inference.standing import Standing
from checkers.wording.book import part

MOST = 4  # names that are listed


def what_is_open(standing: Standing) -> str:
    """Return what is to be settled and tested before a device in order may stay."""
    named = {"still-open": standing.open, "still-to-do": standing.missing}
    said = [part(f"inference.{one}", names=listed(names)) for one, names in named.items() if names]
    return " ".join((*said, part("inference.only-then")))


def listed(names: Iterable[str]) -> str:
    """Return some names in a row, and that there are more."""
    every = list(names)
    first = "; ".join(every[:MOST])
    more = len(every) - MOST
    return part("inference.and-more", names=first, more=more) if more > 0 else first
