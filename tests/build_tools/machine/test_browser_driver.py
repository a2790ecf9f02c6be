"""Where Playwright's own node lacks a library, another one drives the browser."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from build_tools.files import paths
from build_tools.machine import browser_driver
from build_tools.machine.browser_driver import VARIABLE, provide_node
from build_tools.machine.node import Node


@pytest.fixture(autouse=True)
def another_node(monkeypatch: pytest.MonkeyPatch) -> None:
    """One that would be found or fetched."""
    monkeypatch.setattr(browser_driver, "find_node", lambda: Node(("/another/node",), ("npm",)))
    monkeypatch.setenv(VARIABLE, "to be restored")
    provide_node.cache_clear()


@pytest.mark.skipif(sys.platform == "win32", reason="the stand-in is for a shell")
def test_a_node_that_does_not_start_is_not_used(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As where the system has no libatomic, which a bare Debian lacks."""
    node = tmp_path / "node"
    node.write_text(
        "#!/bin/sh\necho 'libatomic.so.1: cannot open shared object file' >&2\nexit 127\n"
    )
    node.chmod(0o755)
    monkeypatch.setattr(browser_driver, "compute_driver_executable", lambda: (str(node), "cli.js"))

    provide_node()

    assert os.environ[VARIABLE] == "/another/node"


def test_one_that_starts_is_left(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is fetched for it."""
    monkeypatch.setattr(
        browser_driver, "compute_driver_executable", lambda: (sys.executable, "cli.js")
    )

    provide_node()

    assert os.environ[VARIABLE] == "to be restored"


def test_playwright_is_started_in_one_place() -> None:
    """Which looks at its node first."""
    started = "sync" + "_playwright("
    files = [*paths.TOOLS.rglob("*.py"), *(paths.ROOT / "tests").rglob("*.py")]

    assert [x.name for x in files if started in x.read_text(encoding="utf-8")] == [
        "browser_driver.py"
    ]
