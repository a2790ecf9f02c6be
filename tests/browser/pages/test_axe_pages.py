"""No page of the site breaks a rule of axe-core or is wider than the narrowest screen."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.axe import UNFOLD, bring_axe, broken_in_either_colours
from tests.browser.guard import NOT_ITS_ROOT, Guard
from tests.browser.host import Host
from tests.browser.phone import NO_COPY, PATIENCE, PHONE, Phone
from tests.browser.sampling import sampled
from tests.browser.settled import page_width

NARROWEST = 320
# The checkers stay at their start: their states have tests of their own.
NO_CHECKERS = """
globalThis.Worker = class extends EventTarget { postMessage() {} terminate() {} };
"""


def _wrong_with(page: Page, place: str) -> list[tuple[Any, ...]]:
    """Return what is wrong with a page in either colours, with all unfolded."""
    page.keyboard.press("Shift")  # a key brings the theme, which else waits for a verdict
    page.evaluate(UNFOLD)
    wide = page_width(page)
    found: list[tuple[Any, ...]] = [(place, "too wide", wide)] if wide > NARROWEST else []
    bring_axe(page)
    return found + broken_in_either_colours(page, place)


@pytest.mark.slow  # its kinds are guarded below; the whole walk takes two minutes
def test_every_page_is_accessible_and_narrow(
    browser: Browser, host: Host, guard: Guard, site_names: set[str]
) -> None:
    """Each page that was built, in light and in dark, at 320 pixels."""
    narrow = {"width": NARROWEST, "height": 915}
    context = browser.new_context(**{**PHONE, "viewport": narrow})
    context.add_init_script(NO_COPY)
    context.add_init_script(NO_CHECKERS)
    guard.watch(context)
    guard.allow(*NOT_ITS_ROOT)
    phone = Phone(context.new_page(), host)
    pages = sorted(name for name in site_names if name.endswith(".html"))
    assert "index.html" in pages
    found = []
    for name in pages:
        phone.open(name.removesuffix("index.html"))
        found += _wrong_with(phone.page, name)
    context.close()

    assert found == []


def _weightiest(site: Path) -> Iterator[str]:
    """The front page, the pages of their own, and the weightiest page of every section."""
    yield ""
    for section in sorted({path.parent.parent for path in site.glob("*/*/index.html")}):
        pages = section.rglob("index.html")
        weightiest = max(pages, key=lambda path: path.stat().st_size)
        yield f"{weightiest.parent.relative_to(site).as_posix()}/"
    yield from ("safety/", "sources/", "troubleshooting/")


@pytest.mark.parametrize("kinds", sampled([slice(4), slice(4, None)], always=1))
def test_every_kind_of_page_is_accessible_when_it_runs(
    phone: Phone, page: Page, site: Path, kinds: slice
) -> None:
    """With its checkers running, if it has any."""
    found = []
    for place in list(_weightiest(site))[kinds]:
        phone.open(place)
        for bar in phone.verdict.all():
            expect(bar).not_to_have_attribute("data-outcome", "waiting", timeout=PATIENCE)
        page.evaluate(UNFOLD)
        bring_axe(page)
        scheme = page.locator("body").get_attribute("data-md-color-scheme")
        found += broken_in_either_colours(page, place)
        expect(page.locator("body")).not_to_have_attribute("data-md-color-scheme", scheme or "")

    assert found == []
