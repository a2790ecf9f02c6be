"""No page asks the browser to fetch another page ahead of a reader's wish."""

from __future__ import annotations

import re

from build_tools.site.build import ensure_site

# What a page's own head fetches or tells, each under a rule of the policy. Firefox takes the hints
# next, prefetch and the like for a fetch that no rule allows, and tells of each in its console.
HARMLESS = {"apple-touch-icon", "icon", "manifest", "stylesheet"}


def test_no_link_in_a_head_is_a_hint() -> None:
    """Each kind of link that any built page holds is one of the few that are meant."""
    pages = sorted(ensure_site().rglob("*.html"))
    assert len(pages) > 100

    links = {
        (link, page.parent.name)
        for page in pages
        for link in re.findall(r"<link\s[^>]*>", page.read_text(encoding="utf-8"))
    }
    kinds = {kind for link, _ in links for kind in re.findall(r'rel="([^"]*)"', link)}

    assert kinds == HARMLESS
    assert all("rel=" in link for link, _ in links)
