"""The theme's script waits for the verdict, and comes at once to a hand that wants it."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, Route, expect

from build_tools.benches.visits.visitor import NOTE_THE_VERDICT
from tests.browser.guard import Guard
from tests.browser.phone import Phone
from tests.browser.starts import CASE, THEME_IS_THERE, wait_until

ASKED_AT = """
performance.getEntriesByType("resource").find(({ name }) => name.includes("/bundle."))?.startTime
"""
LINK = 'main a[href$="safety/"]'


@pytest.fixture
def no_python(page: Page) -> None:
    """A page whose worker never comes, as on a slow network."""
    page.route("**/worker.js", _never)


def _never(_: Route) -> None:
    """Leave the request without an answer."""


def test_the_theme_is_not_asked_for_before_the_verdict(phone: Phone, page: Page) -> None:
    """Both want the processor in the same moment, and one waits for the verdict."""
    page.add_init_script(NOTE_THE_VERDICT)

    phone.open(CASE)
    phone.waits_for("pass")
    wait_until(page, THEME_IS_THERE)

    assert page.evaluate(ASKED_AT) > page.evaluate("globalThis.verdictAt")


@pytest.mark.usefixtures("no_python")
def test_a_search_opened_before_the_verdict_finds(phone: Phone, page: Page) -> None:
    """Its button is there from the start, and a touch brings the theme."""
    phone.open(CASE)
    page.locator("label[for='__search']").first.click()
    page.locator(".md-search__input").press_sequentially("62955")

    expect(page.locator(".md-search-result__link").first).to_be_visible(timeout=20_000)


@pytest.mark.usefixtures("no_python")
def test_a_link_followed_before_the_verdict_leaves_the_worker_alone(
    phone: Phone, page: Page
) -> None:
    """The page is replaced in place, so that a start under way goes on."""
    phone.open(CASE)
    page.evaluate("window.walked = true")

    page.locator(LINK).first.evaluate("(link) => link.click()")

    expect(page.locator("h1")).to_contain_text("Safety")
    assert page.evaluate("window.walked") is True


def test_without_the_theme_the_page_judges_and_leads_on(
    phone: Phone, page: Page, guard: Guard
) -> None:
    """Its script does not come: there is a verdict, and a link opens its page anew."""
    guard.allow("Failed to load resource", "ERR_FAILED")
    page.route("**/bundle.*", lambda route: route.abort())
    phone.open(CASE)
    phone.waits_for("pass")
    expect(page.locator("label[for='__search']").first).to_be_hidden()

    page.locator(LINK).first.evaluate("(link) => link.click()")

    expect(page.locator("h1")).to_contain_text("Safety")


@pytest.mark.usefixtures("no_python")
def test_the_theme_comes_when_the_checkers_take_long(phone: Phone, page: Page) -> None:
    """Nobody waits for the list of pages longer than a moment."""
    phone.open(CASE)

    wait_until(page, THEME_IS_THERE)
