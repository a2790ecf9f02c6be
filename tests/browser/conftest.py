"""A phone-sized browser, shared by all tests, on the built site under a sub-path."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from build_tools.chromium import find_chromium
from build_tools.site_build import ensure_site
from tests.browser.guard import Elsewhere, Guard
from tests.browser.host import Host
from tests.browser.phone import PHONE, Phone


@pytest.fixture(scope="session")
def site() -> Path:
    """The built site's folder."""
    return ensure_site()


@pytest.fixture(scope="session")
def site_names(site: Path) -> set[str]:
    """Every file of the built site, by its place in it, without the squeezed copies."""
    files = (path for path in site.rglob("*") if path.is_file())
    names = {path.relative_to(site).as_posix() for path in files}
    return {name for name in names if not name.endswith((".br", ".gz"))}


@pytest.fixture(scope="session")
def elsewhere() -> Elsewhere:
    """The proxy that notes what is asked of other hosts."""
    return Elsewhere()


@pytest.fixture(scope="session")
def browser(elsewhere: Elsewhere) -> Iterator[Browser]:
    """One Chromium for all tests."""
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(
            executable_path=find_chromium(),
            proxy={"server": elsewhere.address, "bypass": "127.0.0.1"},
        )
        yield started
        started.close()


@pytest.fixture
def host(site: Path) -> Iterator[Host]:
    """A host that serves the site."""
    made = Host(site)
    yield made
    made.stop()


@pytest.fixture
def guard(host: Host, elsewhere: Elsewhere) -> Iterator[Guard]:
    """Fails the test on a request to elsewhere, a broken policy or an error in a script."""
    made = Guard(host.origin, elsewhere)
    yield made
    assert made.complaints() == []


@pytest.fixture
def context(browser: Browser, guard: Guard) -> Iterator[BrowserContext]:
    """A phone that has never seen the site."""
    made = browser.new_context(**PHONE)
    guard.watch(made)
    yield made
    made.close()


@pytest.fixture
def page(context: BrowserContext) -> Page:
    """An empty page on that phone."""
    return context.new_page()


@pytest.fixture
def phone(page: Page, host: Host) -> Phone:
    """The page with the words the tests use."""
    return Phone(page, host)
