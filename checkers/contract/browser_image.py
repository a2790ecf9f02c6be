"""What a browser asks around the image it keeps of this package in memory."""

from __future__ import annotations

import gc
import sys

import checkers.contract.bridge  # noqa: F401  # an image holds what answers: no file comes with it
from checkers.catalogue import checker_for


def get_ready(slug: str) -> None:
    """Import a checker ahead of its first question; raises KeyError where there is none.

    What is there then stays, so the collector need not look at it again. The browser's library
    lets it wait for this.
    """
    checker_for(slug)
    gc.freeze()
    gc.enable()


def wake_up() -> None:
    """Seed chance anew: a state that came with an image would be the same at each start."""
    if "random" in sys.modules:
        sys.modules["random"].seed()
