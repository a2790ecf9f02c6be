"""A script that is fetched later and does not come is told of where it is missed, with a way on."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from build_tools.site.browser_files import browser_files, sources
from build_tools.site.script_floors import floors
from tests.browser.guard import Guard
from tests.browser.log.job_log import SOUND
from tests.browser.phone import Phone

IMPORT = re.compile(r"\bimport\([^)]*\)")
THROUGH_ONE_PLACE = re.compile(r"fetchedLater\(\(\) => (import\([^)]*\))\)")
FETCHED = re.compile(r"\bimport\('\./(?P<name>[\w-]+)-[\w-]{8}\.js'\)")
OF_PAGES = tuple(f"{x}/" for row in floors()["page"] for x in row)
PAGES = {
    "log-page": "log/",
    "schedule-page": "checkers/schedule/",
    "practice-page": "checkers/practice/",
}
# Nobody asks for the first; the second has a file of tests to itself: test_keeping.
OTHERS = {"log-standing", "log-keep"}


def test_scripts_are_fetched_late_in_one_way() -> None:
    """Every late import goes through the one place that knows what to do where it fails."""
    texts = [x.decode() for place, x in sources().items() if place.startswith(OF_PAGES)]
    late = sorted(one for text in texts for one in IMPORT.findall(text))

    assert sorted(one for text in texts for one in THROUGH_ONE_PLACE.findall(text)) == late
    assert set(FETCHED.findall(browser_files()["page.js"].decode())) == {*PAGES, *OTHERS}


@pytest.mark.parametrize("name", sorted(PAGES))
def test_a_page_whose_script_does_not_come_says_so(
    phone: Phone, page: Page, guard: Guard, name: str
) -> None:
    """It names the reason, says that nothing kept is lost, and comes to life when loaded again."""
    guard.allow("Failed to load resource", "ERR_FAILED")
    page.route(f"**/{name}-*.js", lambda route: route.abort())
    phone.open(PAGES[name])
    told = page.get_by_role("alert")
    expect(told).to_contain_text("This cannot run: a part of this page did not arrive")
    expect(told).to_contain_text("What is kept on this device stays as it is.")
    expect(page.locator("article")).not_to_contain_text("If this text stays")

    page.unroute(f"**/{name}-*.js")
    told.get_by_role("button", name="Load the page again").click()

    expect(page.get_by_role("alert")).to_have_count(0)


@pytest.mark.slow
@pytest.mark.first_visit
def test_what_nobody_asked_for_fails_in_silence(phone: Phone, page: Page, guard: Guard) -> None:
    """Judging the log again by itself waits for the next page, and no error is left behind."""
    guard.allow("Failed to load resource", "ERR_FAILED")
    page.route("**/log-standing-*.js", lambda route: route.abort())
    page.add_init_script("indexedDB.databases = async () => [{ name: '/some/where/ job log' }];")
    with page.expect_request("**/log-standing-*.js"):
        phone.open(SOUND)

    assert page.evaluate("localStorage.getItem('/some/where/ judged again by')") is None
