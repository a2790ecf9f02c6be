"""A worker that ends without a word is noticed, and what it was asked is asked again."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from tests.browser.guard import Guard
from tests.browser.phone import PATIENCE, Phone, change_worker
from tests.browser.starts import CASE

pytestmark = pytest.mark.first_visit

WORKER = "**/worker.js"
LONG = "This is taking long."
# A worker that closes itself says nothing of it to anybody (HTML standard, 10.2.1).
ENDS_WHEN_ASKED = """
addEventListener("message", (event) => {
  if (event.data.request?.includes("500")) {
    event.stopImmediatePropagation();
    close();
  }
});
"""
# A slow network: the worker lives, and has nothing to tell of for as long as it takes.
WAITS = "globalThis.fetch = () => new Promise(() => {});"


@pytest.fixture(autouse=True)
def broken_on_purpose(guard: Guard) -> None:
    """What the console says of the fault is no complaint."""
    guard.allow("The checkers")


def test_one_that_ends_when_it_is_asked_is_noticed(phone: Phone, page: Page) -> None:
    """First that it takes long, then why; another try answers what was asked."""
    page.clock.install()
    change_worker(page, ENDS_WHEN_ASKED)
    phone.open(CASE)
    phone.waits_for("pass")
    phone.field("readings", "0", "value").locator("input").fill("500")
    expect(phone.verdict).to_contain_text("Working it out")

    page.clock.run_for(20_000)
    expect(phone.verdict).to_contain_text(LONG)
    expect(page.get_by_role("button", name="Try again")).to_be_visible()
    page.clock.run_for(90_000)
    expect(phone.verdict).to_contain_text("The checkers stopped: they ended without a word")

    page.unroute(WORKER)
    page.get_by_role("button", name="Try again").click()
    phone.waits_for("fail")


@pytest.mark.slow
def test_another_try_need_not_wait_for_the_end(phone: Phone, page: Page) -> None:
    """As soon as it is offered it answers."""
    page.clock.install()
    change_worker(page, ENDS_WHEN_ASKED)
    phone.open(CASE)
    phone.waits_for("pass")
    phone.field("readings", "0", "value").locator("input").fill("500")
    page.clock.run_for(20_000)
    page.unroute(WORKER)

    page.get_by_role("button", name="Try again").click()

    phone.waits_for("fail")


@pytest.mark.slow
def test_one_that_ends_as_it_starts_is_noticed(phone: Phone, page: Page) -> None:
    """The page waits for its first word no longer than for any other."""
    page.clock.install()
    change_worker(page, "close();")
    phone.open(CASE)
    expect(phone.verdict).to_contain_text("Starting the checkers", timeout=PATIENCE)

    page.clock.run_for(20_000)
    expect(phone.verdict).to_contain_text(LONG)
    page.clock.run_for(90_000)
    expect(phone.verdict).to_contain_text("they ended without a word")


def test_one_that_waits_for_the_network_is_not_given_up(phone: Phone, page: Page) -> None:
    """It says that it lives: the reader decides how long to wait."""
    page.clock.install()
    change_worker(page, WAITS)
    phone.open(CASE)
    expect(phone.verdict).to_contain_text("Starting the checkers", timeout=PATIENCE)

    for _ in range(12):
        page.clock.run_for(16_000)
        page.wait_for_timeout(50)

    expect(phone.verdict).to_contain_text(LONG)
    page.unroute(WORKER)
    page.get_by_role("button", name="Try again").click()
    phone.waits_for("pass")
