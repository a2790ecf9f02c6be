"""A checker inside a page's text starts from the page's case and leads to the whole checker."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.host import Host
from tests.browser.phone import PATIENCE, Phone


@pytest.fixture(scope="session")
def lesson(site: Path) -> str:
    """The place of a page that holds a checker for readings with a case of its own."""
    marks = ('data-checker="readings"', "data-given=")
    pages = (path for path in sorted(site.rglob("index.html")) if path.parts[-3] != "checkers")
    found = next(page for page in pages if all(mark in page.read_text("utf-8") for mark in marks))
    return f"{found.parent.relative_to(site).as_posix()}/"


def test_it_starts_from_the_pages_case_and_leads_on(
    phone: Phone, page: Page, host: Host, lesson: str
) -> None:
    """The case is judged in place; one tap opens it, as it stands now, in the whole checker."""
    phone.open(lesson)
    checker = page.locator('[data-checker="readings"]').first
    bar = checker.locator("[data-verdict]")
    expect(bar).not_to_have_attribute("data-outcome", "waiting", timeout=PATIENCE)

    reading = checker.locator('[data-entry] [data-field="value"] input').first
    reading.fill("29 ms")
    page.wait_for_timeout(500)
    assert page.url == host.address + lesson
    checker.locator("[data-open]").click()

    page.wait_for_url("**/checkers/readings/#*")
    phone.waits_until_running()
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("29 ms")
