"""The page for a wrong address: in the site's look, and right at any depth and under any path."""

from __future__ import annotations

import re
from pathlib import Path

from build_tools.pages.rendering import html

LOST = "404.html"  # by this name most hosts look for it
STYLE = re.compile(r'<link rel="stylesheet" href="(?:\./)?([^"]+)">')


def write_lost_page(site: Path, name: str) -> None:
    """Write the page into a built site, with the styles that its front page has.

    Its links begin at the root of the host, which is right there without scripts too; a script
    finds the folder that the site lies in, and mends them. Raises ValueError where the front page
    has no style.
    """
    front = (site / "index.html").read_text(encoding="utf-8")
    styles = STYLE.findall(front)
    if not styles:
        raise ValueError("the front page has no style: see build_tools.pages.lost_page")
    page = html("pages/lost.html", name=name, styles=styles)
    (site / LOST).write_text(page, encoding="utf-8", newline="\n")
