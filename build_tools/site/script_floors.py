"""On which thread a script runs, and what it may import: both follow from its folder."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache

from build_tools.files import paths

SOURCES = paths.TOOLS / "browser"
EVERY = "every"  # what runs on any thread


@cache
def floors() -> dict[str, list[list[str]]]:
    """Return the folders of scripts by thread, floor by floor, the upper ones first."""
    written = tomllib.loads((SOURCES / "floors.toml").read_text(encoding="utf-8"))
    return {thread: part["floors"] for thread, part in written.items()}


def thread_of(script: str) -> str:
    """Return the thread that a script runs on, by its place among the sources.

    Raises KeyError where no floor names its folder.
    """
    folder = script.rpartition("/")[0]
    threads = {one: thread for thread, rows in floors().items() for row in rows for one in row}
    if folder not in threads:
        raise KeyError(f"{script} lies in a folder that no floor of floors.toml names")
    return threads[folder]


def runs_on(thread: str, scripts: Mapping[str, bytes]) -> dict[str, bytes]:
    """Return those scripts that a thread may run: its own, and what runs on any."""
    return {name: x for name, x in scripts.items() if thread_of(name) in {thread, EVERY}}
