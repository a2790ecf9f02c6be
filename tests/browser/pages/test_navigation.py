"""Pages replace one another in place, and Python goes on running."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from tests.browser.phone import Phone
from tests.browser.starts import THEME_IS_THERE, wait_until

CASE = (
    "checkers/readings/#code=gb&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=28"
)


def test_python_survives_a_walk_through_the_site(phone: Phone, page: Page) -> None:
    """Away from a checker and back, Python is started once and the case is still there."""
    started: list[str] = []
    page.on("worker", lambda worker: started.append(worker.url))
    phone.open(CASE)
    phone.waits_for("pass")
    page.evaluate("window.walked = true")

    page.locator(".md-header__button[for='__drawer']").click()
    page.locator(".md-nav__title", has_text="Checkers").click()
    page.locator(".md-nav--primary").get_by_role("link", name="Safety", exact=True).click()
    expect(page.locator("h1")).to_contain_text("Safety")
    expect(page.locator("[data-checker]")).to_have_count(0)
    page.go_back()

    phone.waits_for("pass")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("28")
    assert page.evaluate("window.walked") is True
    assert len([url for url in started if url.endswith("/worker.js")]) == 1


def test_the_front_page_leads_to_a_checker_in_one_tap(phone: Phone, page: Page) -> None:
    """From the question what is in hand, one tap opens a form that runs."""
    phone.open()

    page.get_by_role("link", name="Readings of a device").click()

    expect(page.locator("h1")).to_contain_text("Judge readings")
    phone.waits_until_running()


def test_a_place_on_the_page_leaves_what_is_typed_there(phone: Phone, page: Page) -> None:
    """An example changes the address: the page is not fetched anew under the reader's hands."""
    phone.open(CASE)
    phone.waits_for("pass")
    wait_until(page, THEME_IS_THERE)
    page.evaluate("window.form = document.querySelector('[data-inputs]')")

    page.locator(".examples li:first-child a").click()
    value = phone.field("readings", "0", "value").locator("input")
    value.fill("9999")
    phone.waits_for("fail")
    page.wait_for_timeout(1500)  # as long as fetching it would take

    expect(value).to_have_value("9999")
    assert page.evaluate("window.form.isConnected") is True


def test_the_search_finds_a_page(phone: Phone, page: Page) -> None:
    """A word of the trade leads to its page, in place."""
    phone.open("safety/")
    page.locator("label[for='__search']").first.click()
    page.locator(".md-search__input").press_sequentially("62955")
    found = page.locator(".md-search-result__link").first
    expect(found).to_be_visible(timeout=20_000)

    found.click()

    expect(page.locator(".md-content article")).to_contain_text("62955")
