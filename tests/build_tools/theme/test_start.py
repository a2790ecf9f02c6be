"""The theme's script is left for ours to start on the pages with a checker, and on no other."""

from __future__ import annotations

import re

from build_tools.site.build import ensure_site
from build_tools.theme.start import LOADED, WAITING


def test_pages_with_a_checker_leave_the_script_for_later() -> None:
    """Every page does one or the other: none loads it twice, none forgets it."""
    site = ensure_site()
    pages = [path for path in site.rglob("*.html") if path != site / "404.html"]
    assert len(pages) > 100

    for path in pages:
        page = path.read_text(encoding="utf-8")
        (tag,) = re.findall(r"<script[^>]*bundle\.[^>]*>", page)
        left = tag.startswith(WAITING)
        assert left or tag.startswith(LOADED), path
        assert left == ("data-checker=" in page), path
