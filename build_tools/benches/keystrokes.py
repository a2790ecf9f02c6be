"""From a key pressed in a field to the verdict on the page, in a browser."""

from __future__ import annotations

from statistics import quantiles

from playwright.sync_api import Page

from build_tools.benches.budgets import Measurement
from build_tools.benches.start_up import SITE_PAGE
from build_tools.benches.visits.visitor import VERDICT
from build_tools.machine.browser_driver import browser_driver
from build_tools.machine.chromium import find_chromium
from build_tools.site.build import ensure_site
from build_tools.site.server import served

KEYS = 200
FIELD = '[data-many="readings"] [data-field="value"] input'
# The event's own time is when the key came; a change of the results is the verdict's arrival.
NOTE = """
(() => {
  globalThis.waits = [];
  let since = null;
  addEventListener("input", (event) => { since = event.timeStamp; }, true);
  new MutationObserver(() => {
    if (since !== null) { globalThis.waits.push(performance.now() - since); since = null; }
  }).observe(document.querySelector("[data-results]"), { subtree: true, childList: true });
})()
"""


def measure() -> list[Measurement]:
    """Type into a running checker, so that each key changes what was measured.

    Returns:
        The 95th percentile of the waits [ms].
    """
    with browser_driver() as playwright, served(ensure_site()) as origin:
        browser = playwright.chromium.launch(executable_path=find_chromium())
        page = browser.new_page()
        page.goto(f"{origin}/{SITE_PAGE}")
        page.wait_for_selector(VERDICT)
        waits = _typed(page)
        browser.close()
    return [Measurement("keystroke-to-verdict-95th-percentile", quantiles(waits, n=20)[-1])]


def _typed(page: Page) -> list[float]:
    page.wait_for_timeout(5000)  # the offline copy and the image are kept meanwhile
    box = page.locator(FIELD).first
    box.focus()
    page.evaluate(NOTE)
    for number in range(KEYS):
        page.keyboard.press("Backspace" if number % 2 else "1")
        page.wait_for_timeout(50)
    return [float(wait) for wait in page.evaluate("globalThis.waits")]
