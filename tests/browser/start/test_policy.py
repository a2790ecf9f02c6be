"""The content-security policy holds on every kind of page, and nothing asks elsewhere."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page, expect

from build_tools.pages.lost_page import LOST
from tests.browser.guard import NOT_ITS_ROOT, Elsewhere, Guard
from tests.browser.host import SOURCES, Host, source_folder
from tests.browser.phone import PHONE, Phone
from tests.browser.tells import ASK_WORKER, BLOCKED, TELLS

pytestmark = pytest.mark.first_visit

PLACES = ("", "checkers/", "limits/iec-61008-1/", "codes/gb/", "sources/", LOST)


@pytest.mark.parametrize("place", PLACES)
def test_a_page_keeps_its_policy(phone: Phone, page: Page, guard: Guard, place: str) -> None:
    """Opening a page breaks no rule of its policy, which is there; the guard watches."""
    guard.allow(*(NOT_ITS_ROOT if place == LOST else ("nothing",)))
    phone.open(place)

    policy = page.locator('meta[http-equiv="Content-Security-Policy"]').get_attribute("content")
    assert policy
    assert "unsafe-inline" not in policy
    assert "'unsafe-eval'" not in policy
    page.wait_for_timeout(200)


def test_colours_and_walks_keep_the_policy(phone: Phone, page: Page) -> None:
    """Changing the colours and walking between depths breaks no rule either."""
    phone.open("safety/")
    page.locator(".md-header__option label:visible").first.click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    for name in ("Start", "Safety"):
        page.locator(".md-header__button[for='__drawer']").click()
        page.locator(".md-nav--primary").get_by_role("link", name=name, exact=True).first.click()
        page.wait_for_timeout(300)

    expect(page.locator("h1")).to_contain_text("Safety")


def test_the_policy_is_enforced(phone: Phone, page: Page, guard: Guard) -> None:
    """A script that is not the site's own does not run: the policy is more than a line."""
    guard.allow("POLICY", "Content Security Policy")
    phone.open("safety/")

    page.evaluate(
        "const script = document.createElement('script');"
        "script.textContent = 'window.ran = true'; document.head.append(script)"
    )

    assert page.evaluate("window.ran") is None


def test_the_policy_reaches_a_worker(
    phone: Phone, page: Page, guard: Guard, elsewhere: Elsewhere
) -> None:
    """Neither a fetch nor an import tells another host anything: the browser forbids both."""
    guard.allow("POLICY", "Content Security Policy")
    (source_folder() / "tells.js").write_text(TELLS)
    phone.open("safety/")

    script = f"{phone.host.address}browser/{SOURCES}/tells.js"
    said = page.evaluate(ASK_WORKER, [script, "http://elsewhere.invalid/from-worker"])

    assert said == BLOCKED
    assert elsewhere.asked == []
    guard.foreign.clear()  # a browser tells of what it was about to ask, and did not


def test_the_guard_sees_a_request_to_elsewhere(
    browser: Browser, host: Host, elsewhere: Elsewhere
) -> None:
    """The watch that every other test relies on does notice a request to another host."""
    guard = Guard(host.origin, elsewhere)
    context = browser.new_context(**PHONE)
    guard.watch(context)
    page = context.new_page()
    page.set_content('<img src="http://elsewhere.invalid/picture.png">')
    page.wait_for_timeout(500)
    context.close()

    assert [url for url in guard.foreign if "elsewhere.invalid" in url]
    assert [url for url in elsewhere.asked if "elsewhere.invalid" in url]
    elsewhere.asked.clear()
