"""A phone-sized browser, shared by all tests, on the built site under a sub-path.

One phone serves one test after another and forgets what each has left on it. It has the runtime at
hand, as every phone after the first visit. A test with the mark `first_visit` gets a phone that has
never seen the site, and a host of its own, which it may stop or change.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright

from build_tools.machine.browser_driver import browser_driver
from build_tools.machine.chromium import LEAN, find_chromium
from build_tools.machine.packed_browser.package import PROGRAM
from build_tools.site.build import ensure_site
from tests.browser.guard import Elsewhere, Guard
from tests.browser.host import Host
from tests.browser.phone import PHONE, Phone
from tests.browser.starts import notes_of
from tests.browser.used_phone import UsedPhone

MARK = "first_visit: a phone that has never seen the site, and a host of its own"


def pytest_configure(config: pytest.Config) -> None:
    """Tell pytest of the mark."""
    config.addinivalue_line("markers", MARK)


@pytest.fixture
def whole_browser() -> None:
    """Pass a test by in the fetched browser, which keeps no compiled scripts for the next visit."""
    if find_chromium() == PROGRAM:
        pytest.skip("needs a whole Chromium or Chrome: the fetched one keeps no compiled scripts")


def _is_first_visit(request: pytest.FixtureRequest) -> bool:
    return request.node.get_closest_marker("first_visit") is not None


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
def playwright() -> Iterator[Playwright]:
    """What starts browsers and speaks with them."""
    with browser_driver() as started:
        yield started


@pytest.fixture(scope="session")
def browser(playwright: Playwright, elsewhere: Elsewhere) -> Iterator[Browser]:
    """One Chromium for all tests."""
    started = playwright.chromium.launch(
        executable_path=find_chromium(),
        args=[LEAN],
        proxy={"server": elsewhere.address, "bypass": "127.0.0.1"},
    )
    yield started
    started.close()


@pytest.fixture(scope="session")
def lasting_host(site: Path) -> Iterator[Host]:
    """The host that stays as it is."""
    made = Host(site)
    yield made
    made.stop()


@pytest.fixture(scope="session")
def used_phone(browser: Browser, lasting_host: Host) -> Iterator[UsedPhone]:
    """The phone that serves one test after another."""
    made = UsedPhone(browser, lasting_host)
    yield made
    made.context.close()


@pytest.fixture
def host(request: pytest.FixtureRequest, site: Path) -> Iterator[Host]:
    """A host that serves the site."""
    if not _is_first_visit(request):
        yield request.getfixturevalue("lasting_host")
        return
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
def context(
    request: pytest.FixtureRequest, browser: Browser, guard: Guard
) -> Iterator[BrowserContext]:
    """A phone: it has never seen the site, or it remembers nothing of its visits."""
    if not _is_first_visit(request):
        used: UsedPhone = request.getfixturevalue("used_phone")
        guard.listen(used.context)
        yield used.context
        guard.leave(used.context)
        used.forget()
        return
    made = browser.new_context(**PHONE)
    guard.watch(made)
    yield made
    made.close()


@pytest.fixture
def page(request: pytest.FixtureRequest, context: BrowserContext) -> Page:
    """An empty page on that phone."""
    if _is_first_visit(request):
        return context.new_page()
    used: UsedPhone = request.getfixturevalue("used_phone")
    return used.open_page()


@pytest.fixture
def phone(page: Page, host: Host) -> Phone:
    """The page with the words the tests use."""
    return Phone(page, host)


@pytest.fixture
def notes(page: Page) -> list[str]:
    """What the console is told of starts that are not from the image."""
    return notes_of(page)
