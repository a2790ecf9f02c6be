"""Playwright, which drives the browser, with a node that starts on this machine."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache

from playwright._impl._driver import compute_driver_executable
from playwright.sync_api import Playwright, sync_playwright

from build_tools.machine.node import find_node

VARIABLE = "PLAYWRIGHT_NODEJS_PATH"  # Playwright's own


@contextmanager
def browser_driver() -> Iterator[Playwright]:
    """Start Playwright, and end it with the block.

    Raises:
        Problem: its own node does not start, and no other can be had.
    """
    provide_node()
    with sync_playwright() as started:
        yield started


@cache
def provide_node() -> None:
    """Name another node to Playwright where the one it brings lacks a library, as libatomic."""
    node, _ = compute_driver_executable()
    if subprocess.run([node, "--version"], capture_output=True, check=False).returncode != 0:
        os.environ[VARIABLE] = find_node().node[0]
