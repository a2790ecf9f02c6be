"""Where Python cannot start the page says so, keeps what was typed, and can try again."""

from __future__ import annotations

import time

import pytest
from playwright.sync_api import Page, Route, expect

from tests.browser.guard import Guard
from tests.browser.phone import Phone, change_worker

pytestmark = pytest.mark.first_visit

CHECKER = "checkers/readings/"
CASE = (
    "#code=gb&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"
)


def test_a_blocked_runtime_is_told_and_tried_again(phone: Phone, page: Page, guard: Guard) -> None:
    """With the runtime refused the page offers another try, which then gives the verdict."""
    guard.allow("could not start", "Failed to load resource")
    page.route("**/*.wasm", lambda route: route.abort())
    phone.open(CHECKER + CASE)
    expect(phone.verdict).to_contain_text("could not start", timeout=30_000)
    phone.types("28", "readings", "0", "value")
    expect(phone.verdict).to_contain_text("What you typed is kept")

    page.unroute("**/*.wasm")
    page.get_by_role("button", name="Try again").click()

    phone.waits_for("pass")


def test_half_a_file_is_told(phone: Phone, page: Page, guard: Guard) -> None:
    """A file that arrives short is never run."""
    guard.allow("could not start")

    def halved(route: Route) -> None:
        answer = route.fetch()
        route.fulfill(response=answer, body=answer.body()[: len(answer.body()) // 2])

    page.route("**/*.wasm", halved)
    phone.open(CHECKER + CASE)

    expect(phone.verdict).to_contain_text("did not arrive whole", timeout=30_000)


def test_files_of_another_build_are_never_run(phone: Phone, page: Page, guard: Guard) -> None:
    """Checkers whose hash is not the one the page was built with are refused, also at the last."""
    guard.allow("could not start", "integrity")

    def changed(route: Route) -> None:
        answer = route.fetch()
        time.sleep(2)  # the runtime is up by then, and waits for this file alone
        route.fulfill(response=answer, body=answer.body() + b" ")

    page.route("**/*.whl", changed)
    phone.open(CHECKER + CASE)

    expect(phone.verdict).to_contain_text("could not start", timeout=30_000)


def test_a_browser_without_webassembly_is_told(phone: Phone, page: Page, guard: Guard) -> None:
    """Where WebAssembly is missing the page says just that, and leads to the tables."""
    guard.allow("could not start", "WebAssembly is not defined")
    page.add_init_script("delete window.WebAssembly")
    change_worker(page, "delete globalThis.WebAssembly;")
    phone.open(CHECKER + CASE)

    expect(phone.verdict).to_contain_text("WebAssembly", timeout=30_000)
    phone.verdict.get_by_role("link", name="The limit tables").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Limit tables")


def test_without_scripts_the_page_says_what_it_needs(
    phone: Phone, page: Page, guard: Guard
) -> None:
    """The text that stands before any script runs tells what to do if it stays."""
    guard.allow("Failed to load resource")
    page.route("**/*.js", lambda route: route.abort())
    phone.open(CHECKER)

    expect(phone.verdict).to_contain_text("this browser cannot run the checkers")
    expect(phone.verdict.get_by_role("link")).to_have_attribute("href", "../../limits/")
