"""The site: how long it takes to build, what its heaviest page and its offline copy weigh."""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

from build_tools.benches.budgets import Measurement
from build_tools.runtime.assembly import ensure_runtime
from build_tools.site.build import ensure_site, make_site
from build_tools.site.offline import size_on_device


def measure() -> list[Measurement]:
    """Build once more into a folder of its own, the runtime and compressed contents being there.

    Returns:
        The time [s], and sizes [MB of a million]: a page as it is sent, and the whole copy as
        it lies on a reader's device.
    """
    site = ensure_site()
    runtime = ensure_runtime()
    with tempfile.TemporaryDirectory() as folder:
        start = time.perf_counter()
        make_site(Path(folder) / "site", runtime)
        taken = time.perf_counter() - start
    pages = [path.stat().st_size for path in site.rglob("index.html.br")]
    return [
        Measurement("site-build", taken),
        Measurement("heaviest-page", max(pages) / 1e6),
        Measurement("offline-copy", size_on_device(site) / 1e6),
    ]
