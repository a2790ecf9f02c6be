"""Once seen, the site works without a network: pages, checkers, search."""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from build_tools.site.offline import precache, size_on_device
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import PATIENCE, Phone

pytestmark = pytest.mark.first_visit

CHECKER = "checkers/readings/"
CASE = (
    "#code=gb&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=28"
)


def test_the_site_works_without_a_network(
    phone: Phone, page: Page, host: Host, context: BrowserContext, guard: Guard
) -> None:
    """With the host gone: a reload judges, pages open, and the search finds."""
    phone.open(CHECKER + CASE)
    phone.waits_for("pass")
    state = page.locator("[data-offline]")
    expect(state).to_contain_text("Works offline. Copy built on", timeout=PATIENCE)
    host.stop()
    guard.allow("Failed to load resource", "ERR_")  # the look for a newer build

    page.reload()
    phone.waits_for("pass")

    other = context.new_page()
    other.goto(f"{host.address}limits/iec-61008-1/")
    expect(other.locator("h1")).to_contain_text("IEC 61008-1")
    expect(other.locator("[data-offline]")).to_contain_text("Works offline")

    other.locator('label[for="__search"]').first.click()
    other.locator(".md-search__input").press_sequentially("toroid OR smooth")
    expect(other.locator(".md-search-result__item").first).to_be_visible(timeout=PATIENCE)


def test_the_page_says_how_far_the_copy_is(phone: Phone, page: Page) -> None:
    """While the copy is made its progress is told in files."""
    told: list[str] = []
    page.expose_function("told", lambda text: told.append(text))  # noqa: PLW0108  # a list takes no mark
    page.add_init_script(
        "document.addEventListener('DOMContentLoaded', () => new MutationObserver(() =>"
        " told(document.querySelector('[data-offline]').textContent))"
        ".observe(document.querySelector('[data-offline]'), { childList: true }));"
    )
    phone.open("safety/")

    expect(page.locator("[data-offline]")).to_contain_text("Works offline", timeout=PATIENCE)
    assert any("of" in text and "files" in text for text in told)


def test_a_copy_with_a_file_missing_is_never_taken_for_whole(
    phone: Phone, page: Page, guard: Guard, host: Host
) -> None:
    """If one file cannot be fetched the page says the copy is not finished, and nothing serves."""
    guard.allow("Failed to load resource", "Not Found")
    hidden = host.folder / "search" / "search_index.json"
    host.missing = f"/{hidden.relative_to(host.folder).as_posix()}"
    phone.open("safety/")

    expect(page.locator("[data-offline]")).to_contain_text(
        "could not be finished", timeout=PATIENCE
    )
    assert page.evaluate("navigator.serviceWorker.controller") is None


@pytest.mark.slow
def test_a_copy_not_compared_for_long_says_so(
    phone: Phone, page: Page, host: Host, guard: Guard
) -> None:
    """After more than ninety days without a look at the site the copy tells its age."""
    phone.open("safety/")
    expect(page.locator("[data-offline]")).to_contain_text("Works offline", timeout=PATIENCE)
    host.stop()
    guard.allow("Failed to load resource", "ERR_")
    page.evaluate(
        "Object.keys(localStorage).filter((key) => key.endsWith(' looked')).forEach((key) =>"
        " localStorage.setItem(key, JSON.stringify(Date.now() - 100 * 86400000)))"
    )

    page.reload()

    expect(page.locator("[data-offline]")).to_contain_text("100 days", timeout=PATIENCE)


@pytest.mark.slow
def test_the_copy_is_as_small_as_it_is_counted(phone: Phone, page: Page, host: Host) -> None:
    """What lies on the device is what the build says, and stays under the sixteen megabytes."""
    phone.open("safety/")
    expect(page.locator("[data-offline]")).to_contain_text("Works offline", timeout=PATIENCE)

    kept = page.evaluate(
        "caches.keys().then((names) => caches.open(names[0]))"
        ".then((cache) => cache.matchAll())"
        ".then((all) => Promise.all(all.map((one) => one.blob())))"
        ".then((all) => all.reduce((sum, one) => sum + one.size, 0))"
    )

    assert kept == pytest.approx(size_on_device(host.folder), rel=0.02)
    assert kept < 16e6


def test_the_copy_holds_every_page_and_script(site_names: set[str], host: Host) -> None:
    """Every page, style, script and runtime file of the built site is on the list."""
    kept = set(precache(host.folder))
    pages = {name for name in site_names if name.endswith((".html", ".css", ".js", ".wasm"))}

    assert pages - kept == {"service-worker.js"}
