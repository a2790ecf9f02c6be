"""Where the browser refuses what a site may keep, the checkers run all the same."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone import PATIENCE, Phone, change_worker
from tests.browser.sampling import sampled
from tests.browser.starts import CASE

pytestmark = pytest.mark.first_visit

# What browsers refuse by an error on mere access, where cookies or a foreign frame's are blocked
# (HTML standard, 12.2.2 and 12.2.3: SecurityError; likewise the other stores of a site).
REACHED = (
    "BroadcastChannel",
    "localStorage",
    "sessionStorage",
    "indexedDB",
    "caches",
    "navigator.storage",
    "navigator.serviceWorker",
    "navigator.locks",
)
REFUSE = """
for (const name of %s) {
  const owner = name.startsWith("navigator.") ? Object.getPrototypeOf(navigator) : globalThis;
  const last = name.split(".").pop();
  const refuse = () => { throw new DOMException("The operation is insecure.", "SecurityError"); };
  const shown = last === "BroadcastChannel"
    ? { value: class { constructor() { refuse(); } } }
    : { get: refuse };
  if (last in owner) {
    Object.defineProperty(owner, last, { configurable: true, ...shown });
  }
}
"""


def _refuse(page: Page, *names: str) -> None:
    statements = REFUSE % list(names)
    page.add_init_script(statements)
    change_worker(page, statements)


@pytest.mark.parametrize("name", sampled(REACHED, always=1))
def test_a_verdict_comes_where_one_of_them_is_refused(phone: Phone, page: Page, name: str) -> None:
    """Whichever it is: none of them is needed to judge."""
    _refuse(page, name)
    phone.open(CASE)

    phone.waits_for("pass")
    page.wait_for_timeout(1500)  # the offline copy and the image are tried by then


def test_a_verdict_comes_where_all_are_refused(phone: Phone, page: Page) -> None:
    """As in a frame of a browser that blocks foreign cookies; a changed value is judged too."""
    _refuse(page, *REACHED)
    phone.open(CASE)
    phone.waits_for("pass")

    phone.field("readings", "0", "value").locator("input").fill("500")

    phone.waits_for("fail")


@pytest.mark.parametrize(
    "place", sampled(["log/", "checkers/schedule/", "checkers/practice/"], always=1)
)
def test_other_pages_come_up_where_all_are_refused(phone: Phone, page: Page, place: str) -> None:
    """Without an error of a script, which the guard would see."""
    _refuse(page, *REACHED)
    phone.open(place)

    if place != "log/":
        phone.waits_until_running()
    expect(page.locator("[data-offline]").first).to_contain_text(
        "No offline copy", timeout=PATIENCE
    )
