"""The site: how long it takes to build, what its heaviest page and its offline copy weigh."""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

from build_tools.figures import Figure
from build_tools.offline import size_on_device
from build_tools.runtime import ensure_runtime
from build_tools.site_build import ensure_site, make_site


def measure() -> list[Figure]:
    """Build once more into a folder of its own, the runtime and squeezed contents being there.

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
        Figure("site-build", taken),
        Figure("heaviest-page", max(pages) / 1e6),
        Figure("offline-copy", size_on_device(site) / 1e6),
    ]
