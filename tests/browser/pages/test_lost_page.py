"""A wrong address ends on a page of the site, with ways on that work from where it stands."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Response, expect

from build_tools.pages.lost_page import LOST
from tests.browser.axe import bring_axe, broken
from tests.browser.guard import NOT_ITS_ROOT, Guard
from tests.browser.host import Host
from tests.browser.phone import PATIENCE, PHONE, Phone

WRONG = ["no-such-page", "checkers/readngs/", "a/folder/that/is/not/there/trip-tme.html"]
WAYS = {"The front page": "", "All checkers": "checkers/", "Credits and licences": "credits/"}


def _opens(page: Page, address: str) -> Response:
    answer = page.goto(address)
    assert answer
    return answer


def _is_right(page: Page, host: Host) -> None:
    """The site's look, and its ways from the site's own root."""
    expect(page.locator("h1")).to_have_text("There is no page at this address")
    for words, place in WAYS.items():
        way = page.get_by_role("link", name=words, exact=True)
        expect(way).to_have_attribute("href", host.address + place)
    expect(page.locator(".md-header")).to_have_css("background-color", "rgb(11, 85, 99)")


@pytest.mark.first_visit
@pytest.mark.parametrize("place", WRONG)
def test_a_wrong_address_is_told_in_the_sites_own_look(
    page: Page, host: Host, guard: Guard, place: str
) -> None:
    """At any depth, under the path that the site has here, before any copy is kept."""
    guard.allow(*NOT_ITS_ROOT)
    assert _opens(page, host.address + place).status == 404

    _is_right(page, host)
    page.get_by_role("link", name="All checkers").click()
    expect(page.locator("h1")).to_contain_text("Checkers")


@pytest.mark.first_visit
def test_the_search_is_opened_with_the_words_of_the_address(
    page: Page, host: Host, guard: Guard
) -> None:
    """What somebody was looking for is typed already."""
    guard.allow(*NOT_ITS_ROOT)
    _opens(page, f"{host.address}tests/smooth-dc.html")
    _is_right(page, host)

    page.get_by_role("link", name="Search this site").click()

    expect(page.locator(".md-search__input")).to_have_value("smooth dc")
    expect(page.locator(".md-search-result__item").first).to_be_visible(timeout=PATIENCE)


@pytest.mark.slow
@pytest.mark.first_visit
def test_a_wrong_address_is_told_without_a_network(
    phone: Phone, page: Page, host: Host, context: BrowserContext, guard: Guard
) -> None:
    """The copy answers as a host would: not found, with the page for it."""
    phone.open("safety/")
    expect(page.locator("[data-offline]")).to_contain_text("Works offline", timeout=PATIENCE)
    host.stop()
    guard.allow("Failed to load resource", "ERR_")

    other = context.new_page()
    answer = _opens(other, f"{host.address}checkers/readngs/?from=a-list")

    assert answer.status == 404
    _is_right(other, host)
    other.get_by_role("link", name="The front page").click()
    expect(other).to_have_title("RCDs and DC")


def test_without_scripts_the_page_says_how_to_go_on(browser: Browser, host: Host) -> None:
    """Its links are those of a site at the root of its host, and it says so."""
    context = browser.new_context(**PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{host.address}no/such/page")

    expect(page.get_by_role("link", name="The front page")).to_have_attribute("href", "/")
    expect(page.locator("noscript p")).to_contain_text("put the name of that folder first")
    context.close()


@pytest.mark.first_visit
@pytest.mark.parametrize("colours", ["light", "dark"])
def test_the_page_is_read_by_everyone(page: Page, host: Host, guard: Guard, colours: str) -> None:
    """In the colours that the device asks for, with all that readers of screens need."""
    guard.allow(*NOT_ITS_ROOT)
    page.emulate_media(color_scheme="dark" if colours == "dark" else "light")
    _opens(page, f"{host.address}no/such/page")
    _is_right(page, host)

    scheme = "slate" if colours == "dark" else "default"
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", scheme)
    bring_axe(page)
    assert broken(page, "a wrong address") == []


def test_the_page_itself_can_be_opened(page: Page, host: Host, guard: Guard) -> None:
    """Where a host sends it from its own address."""
    guard.allow(*NOT_ITS_ROOT)
    _opens(page, host.address + LOST)

    _is_right(page, host)
