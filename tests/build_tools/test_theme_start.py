"""The theme's script is left for ours to start on the pages with a checker, and on no other."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.site_build import ensure_site
from build_tools.theme_start import (
    CHANGES,
    LOADED,
    WAITING,
    at_any_time,
    mend_start,
    waiting,
)


def test_the_script_starts_at_any_time(tmp_path: Path) -> None:
    """Both places that reckon with a page still being read are changed, and nothing else."""
    bundle = tmp_path / "assets/javascripts/bundle.0123.min.js"
    bundle.parent.mkdir(parents=True)
    bundle.write_text("; ".join(["first", *CHANGES, "last"]), encoding="utf-8")

    mend_start(tmp_path)

    expected = "; ".join(["first", *CHANGES.values(), "last"])
    assert bundle.read_text(encoding="utf-8") == expected


@pytest.mark.parametrize("change", [at_any_time, waiting])
@pytest.mark.parametrize("text", ["", 2 * "".join([*CHANGES, LOADED])])
def test_a_theme_that_starts_in_another_way_stops_the_build(
    change: Callable[[str], str], text: str
) -> None:
    """Neither none nor two places are guessed at."""
    with pytest.raises(ValueError, match="another way"):
        change(text)


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
