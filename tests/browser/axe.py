"""The accessibility rules of axe-core, in whichever colours a page is shown."""

from __future__ import annotations

import json
from typing import Any

from playwright.sync_api import Page

from build_tools.runtime import npm_package
from tests.browser.settled import settle

AXE = npm_package.FOLDER / "node_modules" / "axe-core" / "axe.min.js"
# All other rules find the same in light and in dark.
COLOUR_RULES = ("color-contrast", "link-in-text-block")
SWITCH = ".md-header__option label:not([hidden])"
UNFOLD = "document.querySelectorAll('details').forEach((one) => { one.open = true; })"


def bring_axe(page: Page) -> None:
    """Bring axe-core into the page; it stays until another document is opened."""
    page.evaluate(AXE.read_text(encoding="utf-8"))


def broken(page: Page, state: str, rules: tuple[str, ...] = ()) -> list[tuple[Any, ...]]:
    """Return what breaks a rule on the page as it is shown now, with the state's name.

    Args:
        page: a page that axe-core was brought into.
        state: what the page shows, for whoever reads the complaint.
        rules: the rules to look for; without any, all.
    """
    settle(page)
    asked: dict[str, Any] = {"resultTypes": ["violations"], "preload": False}
    if rules:
        asked["runOnly"] = list(rules)
    report = page.evaluate(f"axe.run(document, {json.dumps(asked)})")
    scheme = page.locator("body").get_attribute("data-md-color-scheme")
    return [
        (state, scheme, one["id"], node["target"], node["failureSummary"])
        for one in report["violations"]
        for node in one["nodes"]
    ]


def broken_in_either_colours(page: Page, state: str) -> list[tuple[Any, ...]]:
    """Return the same for both colour schemes; the page is left in the other one.

    Only the page for what is not there stands outside the theme, and has no such switch.
    """
    found = broken(page, state)
    if page.title().startswith("No page at this address"):
        return found
    page.locator(SWITCH).first.evaluate("(label) => label.click()")
    return found + broken(page, state, COLOUR_RULES)
