"""After the first visit one start is tried, so that the next finds its scripts compiled."""

from __future__ import annotations

import json
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.host import PATH, source_of
from tests.browser.phone import Phone
from tests.browser.starts import (
    IMAGE_IS_KEPT,
    REHEARSED,
    visit,
    wait_for_image,
    wait_until,
    was_from_image,
)

pytestmark = pytest.mark.first_visit

RUNTIME = "pyodide.asm.js"
TRY = """
async ([script, length]) => {
  const { rehearse } = await import(script);
  rehearse(length, () => { globalThis.wasRefused = true; });
}
"""


@pytest.mark.slow
@pytest.mark.usefixtures("whole_browser")
def test_the_next_start_finds_its_scripts_compiled(
    phone: Phone, page: Page, browser: Browser, notes: list[str]
) -> None:
    """The runtime's script, of 1 MB, is not compiled again at the second visit."""
    visit(phone)
    wait_until(page, REHEARSED)
    page.wait_for_timeout(500)  # the browser writes it down in its own time

    browser.start_tracing(page=page, categories=["v8", "disabled-by-default-v8.compile"])
    visit(phone)
    events = json.loads(browser.stop_tracing())["traceEvents"]

    compiled = [one["args"]["data"] for one in events if one["name"] == "v8.compileModule"]
    (runtime,) = (one for one in compiled if one["url"].endswith(RUNTIME))
    assert runtime["consumedCacheSize"] > 0
    assert was_from_image(page)
    assert notes == []


@pytest.mark.slow
def test_the_worker_of_a_rehearsal_is_ended(phone: Phone, page: Page, notes: list[str]) -> None:
    """One worker is left, the page's own, and it still answers."""
    visit(phone)
    wait_until(page, REHEARSED)
    page.wait_for_timeout(200)

    assert len([one for one in page.workers if one.url.endswith("/worker.js")]) == 1
    phone.field("readings", "0", "value").locator("input").fill("500")
    phone.waits_for("fail")
    assert notes == []


@pytest.mark.slow
def test_a_device_short_of_memory_does_without(phone: Phone, page: Page, notes: list[str]) -> None:
    """Two Pythons at a time could cost it the page: the copy serves, and nothing is rehearsed."""
    page.add_init_script("Object.defineProperty(navigator, 'deviceMemory', { value: 1 })")
    visit(phone)
    wait_for_image(page)
    wait_until(page, "navigator.serviceWorker.controller !== null")
    page.wait_for_timeout(2000)

    assert not page.evaluate(REHEARSED)
    assert notes == []


def test_an_image_that_cannot_be_used_is_forgotten_before_it_is_needed(
    phone: Phone, page: Page, notes: list[str]
) -> None:
    """A rehearsal refused it: the page hears of it, and the console once."""
    visit(phone)
    wait_for_image(page)
    wait_until(page, REHEARSED)
    page.evaluate(f"localStorage.removeItem('/{PATH}/ start rehearsed')")

    page.evaluate(TRY, [source_of("client/rehearsal.js"), _length(page) + 4096])

    wait_until(page, "globalThis.wasRefused === true")
    assert len(notes) == 1
    assert "another length" in notes[0]


def _length(page: Page) -> Any:
    assert page.evaluate(IMAGE_IS_KEPT)
    return page.evaluate(f"Number(localStorage.getItem('/{PATH}/ start image'))")
