"""A machine with no browser of its own has its pages tried in one that npm carries."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, Playwright

from build_tools.machine.chromium import find_chromium
from build_tools.machine.packed_browser.package import PROGRAM, fits_machine
from tests.browser.guard import Elsewhere, Guard
from tests.browser.host import Host
from tests.browser.phone import PHONE, Phone
from tests.browser.settled import page_width
from tests.browser.starts import CASE

pytestmark = pytest.mark.skipif(not fits_machine(), reason="npm carries none for this machine")

# Letters that no font draws have no width.
WIDTH = """() => {
  const text = document.querySelector("h1").firstChild;
  const range = document.createRange();
  range.selectNodeContents(text);
  return range.getBoundingClientRect().width;
}"""


@pytest.fixture
def packed_browser(playwright: Playwright, elsewhere: Elsewhere) -> Iterator[Browser]:
    """The browser of a machine whose PATH holds none."""
    program = find_chromium({"PATH": ""})
    assert program == PROGRAM
    proxy = {"server": elsewhere.address, "bypass": "127.0.0.1"}
    started = playwright.chromium.launch(executable_path=program, proxy=proxy)  # type: ignore[arg-type]
    yield started
    started.close()


@pytest.fixture
def page(packed_browser: Browser, guard: Guard) -> Page:
    """An empty page in it."""
    context = packed_browser.new_context(**PHONE)
    guard.watch(context)
    return context.new_page()


def test_a_case_is_judged_and_drawn(page: Page, host: Host) -> None:
    """Python runs, and its fonts are those that came with it."""
    phone = Phone(page, host)
    phone.open(CASE)
    phone.waits_for("pass")

    assert page.evaluate(WIDTH) > 0
    assert page_width(page) == PHONE["viewport"]["width"]
