"""What is tapped in a checker, and whether it is large enough for a thumb in a glove."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Page

from tests.browser.settled import settle

LEAST = 48  # px, either way
# Measured by the box that takes the tap; links in running text may be small.
SMALL = """
(least) => [...document.querySelectorAll(
  ":is([data-checker], [data-schedule], [data-practice]) :is("
  + "button, select, summary, textarea, input, a[href])")]
  .filter((one) => one.checkVisibility({ visibilityProperty: true }))
  .filter((one) => !(one.tagName === "A" && getComputedStyle(one).display === "inline"))
  .map((one) => {
    const { width, height } = (one.closest("label") ?? one).getBoundingClientRect();
    return [one.outerHTML.slice(0, 120), width, height];
  })
  .filter(([, width, height]) => Math.min(width, height) < least)
"""


def too_small(page: Page) -> list[Any]:
    """Return what can be tapped in the checkers of a page but is too small, with its size."""
    settle(page)
    found: list[Any] = page.evaluate(SMALL, LEAST)
    return found
