"""What a visitor who was never here fetches before the first verdict, as a server sends it."""

from __future__ import annotations

from pathlib import Path

from build_tools.benches.visits.visitor import Visitor
from build_tools.machine.browser_driver import browser_driver
from build_tools.site.browser_files import worker
from build_tools.site.server import served
from build_tools.site.start_list import ARCHIVES, IMPORTED, MACHINE_CODE

# What the page itself fetched by then. What its worker fetches is not on a page's list, but for the
# scripts that the page compares: those come from the browser's cache the second time.
FETCHED = r"""
performance.getEntries()
  .filter((entry) => ["navigation", "resource"].includes(entry.entryType))
  .filter((entry) => entry.responseEnd <= globalThis.verdictAt)
  .filter((entry) => !/worker\.js|\/runtime\//.test(entry.name))
  .reduce((sum, entry) => sum + entry.encodedBodySize, 0)
"""


def compressed_bytes(site: Path, place: str) -> int:
    """Add up the page, its styles and scripts, the runtime and the checkers.

    Args:
        site: the built site, with its compressed copies.
        place: the page, with a question that passes.

    Returns:
        The bytes of all bodies as they are sent to a browser that takes brotli.
    """
    with browser_driver() as playwright, served(site) as origin:
        visitor = Visitor(playwright, slow=False)
        try:
            by_page = visitor.look(f"{origin}/{place}", FETCHED)
        finally:
            visitor.leave()
    started = (IMPORTED, *ARCHIVES, MACHINE_CODE)
    runtime = [x for x in (site / "runtime").iterdir() if x.name.endswith(started)]
    return int(by_page) + sum(_sent(file) for file in [*runtime, site / worker()])


def _sent(file: Path) -> int:
    compressed = file.with_name(f"{file.name}.br")
    return (compressed if compressed.exists() else file).stat().st_size
