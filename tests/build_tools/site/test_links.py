"""Every link of the built site leads to a file, and to a place on it, that are there."""

from __future__ import annotations

from html.parser import HTMLParser
from pathlib import Path
from typing import NamedTuple
from urllib.parse import unquote, urljoin, urlsplit

import pytest

from build_tools.site.build import ensure_site

ORIGIN = "http://site.invalid/"  # RFC 6761, 6.4: a name that never resolves

TAKE_CASES = {"data-own-address", "data-practice", "data-schedule"}


class Links(HTMLParser):
    """What a page names itself, and where it leads."""

    def __init__(self) -> None:
        super().__init__()
        self.names: set[str] = {"", "__skip"}
        self.leads: set[str] = set()
        self.takes_cases = False  # a checker's own page reads a case from its address

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note the names and the addresses of one element."""
        found = dict(attrs)
        self.takes_cases |= not TAKE_CASES.isdisjoint(found)
        self.names |= {found[key] or "" for key in ("id", "name") if key in found}
        addresses = {found[key] or "" for key in ("href", "src") if key in found}
        self.leads |= {one for one in addresses if tag != "base" and not one.startswith("data:")}


class Lead(NamedTuple):
    """One link: the page it stands on, and the address as it is written there."""

    page: str
    address: str


@pytest.fixture(scope="module")
def pages() -> dict[str, Links]:
    """Every page by its address within the site."""
    site = ensure_site()
    found = {}
    for path in sorted(site.rglob("*.html")):
        links = found[path.relative_to(site).as_posix().removesuffix("index.html")] = Links()
        links.feed(path.read_text(encoding="utf-8"))
    return found


def resolved(pages: dict[str, Links]) -> list[tuple[Lead, str, str]]:
    """Return each link within the site with its target and the name after its #."""
    leads = [Lead(page, one) for page, links in pages.items() for one in sorted(links.leads)]
    parted = [(lead, urlsplit(urljoin(ORIGIN + lead.page, lead.address))) for lead in leads]
    return [
        (lead, unquote(to.path).lstrip("/"), unquote(to.fragment))
        for lead, to in parted
        if to.netloc == urlsplit(ORIGIN).netloc
    ]


def test_every_link_leads_to_a_file(pages: dict[str, Links]) -> None:
    """On the site itself, whatever path it is put under."""
    site = ensure_site()
    found = resolved(pages)
    lost = [lead for lead, to, _ in found if not _is_there(site, to)]

    assert len(found) > len(pages)
    assert lost == []


def test_every_place_on_a_page_is_there(pages: dict[str, Links]) -> None:
    """A name after a # is on the page; a case after it is for a checker's own page."""
    named = [(lead, pages[to], name) for lead, to, name in resolved(pages) if to in pages]
    lost = [
        lead
        for lead, page, name in named
        if name not in page.names and not ("=" in name and page.takes_cases)
    ]

    assert any(name for _, _, name in named)
    assert lost == []


def _is_there(site: Path, to: str) -> bool:
    return (site / to / "index.html" if to.endswith("/") or not to else site / to).is_file()
