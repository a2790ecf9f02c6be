"""The search finds what people type, the right page first or near it."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone import PATIENCE, PHONE, Phone
from tests.browser.sampling import sampled
from tests.browser.settled import page_width

RESULT = ".md-search-result__item > .md-search-result__link"
NEAR = 4  # results that a phone shows without scrolling far


@pytest.mark.parametrize(
    ("typed", "leads"),
    sampled(
        [
            ("33ms", "questions/must-it-be-under-30-ms/"),
            ("RCD won't trip", "troubleshooting/"),
            ("type b 6ma", "device-types/b/"),
            ("x5", "tests/trip-time/"),
            ("FI", "device-forms/"),
            ("GFCI", "device-forms/gfci/"),
            ("aardlek", "device-forms/"),
            ("differenziale", "device-forms/"),
            ("heat pump", "dc-sources/heat-pump-single-phase/"),
            ("wallbox", "dc-sources/ev-charge-point/"),
            ("nuisance tripping", "leakage/"),
            ("200 ohm", "questions/is-200-ohm-good-enough/"),
        ],
        always=3,
    ),
)
def test_what_is_typed_leads_to_its_page(phone: Phone, page: Page, typed: str, leads: str) -> None:
    """Typed as people type it, the page is among the first results."""
    phone.open("safety/")
    page.locator(".md-header__button[for='__search']").click()
    page.locator(".md-search__input").press_sequentially(typed)

    first = page.locator(RESULT)
    expect(first.first).to_be_visible(timeout=PATIENCE)
    found = f".md-search-result__item:nth-child(-n+{NEAR}) > a[href*='/{leads}?h=']"
    page.locator(found).first.wait_for(timeout=PATIENCE)
    expect(first.first.locator(".md-tags")).to_be_hidden()
    assert page_width(page) <= PHONE["viewport"]["width"]


def test_an_address_with_a_search_shows_its_results(phone: Phone, page: Page) -> None:
    """The index waits until the search is opened, and such an address opens it."""
    phone.open("?q=33ms")

    expect(page.locator(RESULT).first).to_be_visible(timeout=PATIENCE)


def test_found_words_are_marked_on_the_page_that_is_opened(phone: Phone, page: Page) -> None:
    """Opened from the results, and by its address anew."""
    phone.open("?q=wallbox")
    page.locator(RESULT).first.click()
    marked = page.locator("main mark[data-md-highlight]").first
    expect(marked).to_be_attached(timeout=PATIENCE)

    page.reload()

    expect(marked).to_be_attached(timeout=PATIENCE)


def test_the_index_is_not_fetched_before_the_search_is_opened(phone: Phone, page: Page) -> None:
    """A page that nobody searches from is spared it."""
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    phone.open("safety/")
    page.wait_for_load_state("networkidle")

    assert asked
    assert [one for one in asked if "search_index" in one] == []
