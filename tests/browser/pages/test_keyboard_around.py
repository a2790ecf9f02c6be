"""Search, the drawer of pages and the way from page to page, with the keyboard alone."""

from __future__ import annotations

import string

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.pages.keyboard_walk import number_controls, press_until, walk
from tests.browser.phone import PATIENCE, Phone
from tests.browser.starts import THEME_IS_THERE, wait_until

CHECKER = "checkers/readings/"
SETTLED = 300  # ms: the theme closes search and drawer a moment after a page has come
NEIGHBOURS = """() => ["prev", "next"].forEach((rel) =>
  document.head.append(Object.assign(document.createElement("link"), { rel, href: "../" })))"""


@pytest.fixture
def at_checker(phone: Phone) -> Page:
    """A checker's page on a phone set to little motion: what opens or slides is there at once."""
    phone.page.emulate_media(reduced_motion="reduce")
    phone.open(CHECKER)
    phone.waits_until_running()
    return phone.page


def _focus(page: Page) -> Locator:
    return page.locator("*:focus")


def _opens_drawer(page: Page) -> None:
    press_until(page, "Tab", "[for=__drawer]", 3)
    expect(_focus(page)).to_have_accessible_name("Navigation")
    expect(_focus(page)).to_have_attribute("aria-expanded", "false")
    page.keyboard.press("Enter")
    expect(page.locator("button[for=__drawer]")).to_have_attribute("aria-expanded", "true")


def test_keys_open_the_drawer_lead_through_it_and_close_it(at_checker: Page) -> None:
    """The focus goes to the list that is seen, from list to list, and back where it was."""
    page = at_checker
    _opens_drawer(page)
    expect(_focus(page)).to_have_accessible_name("Checkers, back")
    page.keyboard.press("Space")
    expect(_focus(page)).to_have_accessible_name("Checkers")
    expect(_focus(page)).to_have_attribute("aria-expanded", "false")
    page.keyboard.press("Tab")
    expect(_focus(page)).to_have_accessible_name("Job log")
    expect(_focus(page)).to_be_in_viewport(ratio=1)
    page.keyboard.press("Escape")

    expect(_focus(page)).to_have_accessible_name("Navigation")
    expect(_focus(page)).to_have_attribute("aria-expanded", "false")
    expect(page.locator(".md-sidebar--primary")).to_be_hidden()


def test_only_what_is_seen_of_the_drawer_is_reached(at_checker: Page) -> None:
    """Each in view and marked; past the last the drawer closes, and the page goes on."""
    page = at_checker
    _opens_drawer(page)
    controls = number_controls(page)
    inside = page.locator(".md-sidebar--primary [data-walk]:visible").count()

    stops = walk(page, len(controls))

    first = stops[: inside - 1]  # the focus stands on the first one already
    assert inside > 1
    assert [controls[one.number] for one in first if not (one.seen and one.marked)] == []
    expect(page.locator("button[for=__drawer]")).to_have_attribute("aria-expanded", "false")


def test_a_page_opened_by_key_is_read_from_its_heading(at_checker: Page) -> None:
    """Out of the drawer, the focus is on the new page's heading, and stays there."""
    page = at_checker
    _opens_drawer(page)
    press_until(page, "Tab", "[href$='/test-plan/']", 6)
    page.keyboard.press("Enter")

    expect(page.locator("h1:focus")).to_contain_text("Test plan")
    page.wait_for_timeout(SETTLED)
    expect(page.locator("h1:focus")).to_contain_text("Test plan")


def test_keys_open_the_search_find_a_page_and_leave(at_checker: Page) -> None:
    """What was found is told; arrows lead to it; Escape gives the page back where it was left."""
    page = at_checker
    press_until(page, "Tab", ".md-search__input", 5)
    page.keyboard.type("wallbox")
    result = page.locator(".md-search-result__link").first
    expect(result).to_be_visible(timeout=PATIENCE)
    told = page.locator(".md-search-result__meta[role=status]")
    expect(told).to_contain_text("matching documents")
    page.keyboard.press("ArrowDown")
    assert result.evaluate("(link) => link === document.activeElement")

    page.keyboard.press("Escape")
    expect(page.locator(".md-search__output")).to_be_hidden()
    page.keyboard.press("Tab")

    assert _focus(page).evaluate("(one) => one.closest('main') !== null")
    expect(_focus(page)).to_be_in_viewport(ratio=1)


def test_a_single_letter_outside_a_field_does_nothing(at_checker: Page) -> None:
    """WCAG 2.1, 2.1.4: what speech input or a glove presses opens no search and no other page."""
    page = at_checker
    wait_until(page, THEME_IS_THERE)
    page.evaluate(NEIGHBOURS)  # pages name none, but the theme's keys would follow them
    assert page.locator("link:is([rel=prev], [rel=next])").count() == 2
    press_until(page, "Tab", "[for=__drawer]", 3)
    address = page.url

    page.keyboard.type(string.ascii_letters + string.digits + string.punctuation)
    page.wait_for_timeout(SETTLED)

    assert page.url == address
    expect(_focus(page)).to_have_accessible_name("Navigation")
    expect(page.locator("#__search")).not_to_be_checked()
