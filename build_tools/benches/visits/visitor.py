"""Visits of one page with one Chromium: how long until its verdict stands there."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, Playwright

from build_tools.benches.visits.slowing import slowed
from build_tools.machine.chromium import find_chromium
from build_tools.machine.problems import Problem

OPTIONS = (
    "--headless=new",
    "--no-sandbox",
    "--no-first-run",
    "--disable-extensions",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--remote-debugging-port=0",
)
PATIENCE = 120_000  # milliseconds
SETTLING = 2500  # milliseconds in which a browser just started still builds its own windows
VERDICT = "[data-outcome=pass]"
NOTE_THE_VERDICT = f"""
new MutationObserver(() => {{
  if (document.querySelector("{VERDICT}")) {{ globalThis.verdictAt ??= performance.now(); }}
}}).observe(document, {{ subtree: true, childList: true, attributes: true }});
"""


class Visitor:
    """A browser's profile: what it keeps between visits, and visits with it."""

    def __init__(self, playwright: Playwright, *, slow: bool) -> None:
        self.playwright = playwright
        self.slow = slow
        self.profile = Path(tempfile.mkdtemp(prefix="visitor-"))

    def visit(self, address: str, until: str = "true") -> float:
        """Start the browser, open a page, and close the browser again.

        Args:
            address: the page's address.
            until: what must be true in the page before the browser closes, as JavaScript.

        Returns:
            The time from the start of the navigation until the verdict is there [ms].
        """
        return float(self.look(address, "globalThis.verdictAt", until))

    def look(self, address: str, asked: str, until: str = "true") -> Any:
        """Visit a page as `visit` does, and give what a piece of JavaScript says there."""
        with self._browser() as (page, group):
            page.add_init_script(NOTE_THE_VERDICT)
            with slowed(group) if self.slow else nullcontext():
                page.goto(address, wait_until="commit")
                page.wait_for_selector(VERDICT, state="attached", timeout=PATIENCE)
            _wait(page, until)
            return page.evaluate(asked)

    def leave(self) -> None:
        """Forget the profile."""
        shutil.rmtree(self.profile, ignore_errors=True)

    @contextmanager
    def _browser(self) -> Iterator[tuple[Page, int]]:
        told = self.profile / "DevToolsActivePort"
        told.unlink(missing_ok=True)
        with _started(self.profile) as process:
            try:
                browser = self.playwright.chromium.connect_over_cdp(_address(told))
                page = browser.contexts[0].pages[0]
                page.wait_for_timeout(SETTLING)
                yield page, process.pid
                browser.new_browser_cdp_session().send("Browser.close")
                process.wait(timeout=20)
            finally:
                _end(process)


def _started(profile: Path) -> subprocess.Popen[bytes]:
    options = [*OPTIONS, f"--user-data-dir={profile}", "about:blank"]
    return subprocess.Popen(
        [str(find_chromium()), *options],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,  # a group of its own, which can be slowed and ended as one
    )


def _wait(page: Page, until: str) -> None:
    # Asked again and again from outside: the page's policy lets no text run as a script.
    for _ in range(PATIENCE // 100):
        if page.evaluate(until):
            return
        page.wait_for_timeout(100)
    raise Problem(f"The page never came to this: {until}", "look at it in a browser.")


def _address(told: Path) -> str:
    for _ in range(600):
        if told.exists() and (lines := told.read_text(encoding="ascii").splitlines()):
            return f"http://127.0.0.1:{lines[0]}"
        time.sleep(0.05)
    raise Problem("Chromium did not start.", "try it by hand, then run this again.")


def _end(process: subprocess.Popen[bytes]) -> None:
    if process.poll() is None:
        os.killpg(process.pid, signal.SIGKILL)
