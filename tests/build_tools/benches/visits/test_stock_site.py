"""The page to compare with runs: a browser takes every file that it names."""

from __future__ import annotations

import re

from build_tools.benches.visits.stock_site import PAGE, runtime_files
from build_tools.files.media_types import UNKNOWN, media_type

NAMED = re.compile(r'"(?:\./)?((?:[\w-]+/)*[\w.-]+\.\w+)"')
NAMES = {name for script in PAGE.glob("*.js") for name in NAMED.findall(script.read_text("utf-8"))}


def test_every_file_that_it_names_is_served_with_its_type() -> None:
    """A module of no known type does not run, and the page would never answer."""
    assert {"page.js", "worker.js"} <= NAMES
    assert [name for name in sorted(NAMES) if media_type(name) == UNKNOWN] == []


def test_it_keeps_the_runtime_whole() -> None:
    """Each file by the name that it lies under."""
    assert set(runtime_files().values()) <= NAMES
