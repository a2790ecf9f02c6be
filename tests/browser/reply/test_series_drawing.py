"""The drawing of an arrangement follows what is typed, fits a phone, and is there in words."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from build_tools.pages.macros.checkers import fragment
from checkers.catalogue.series import TWO_CHARGE_POINTS
from tests.browser.phone import Phone
from tests.browser.settled import page_width, settle

PLACE = f"checkers/series/#{fragment(TWO_CHARGE_POINTS.request)}"
TREE = "[data-results] figure.tree"


def test_the_drawing_follows_what_is_typed(phone: Phone, page: Page) -> None:
    """A main device of type B in place of type A: the word, the shape and the DC change."""
    phone.open(PLACE)
    phone.waits_for("fail")
    main = page.locator(f"{TREE} > svg text").first
    expect(main).to_contain_text("Fail: DC up to 12 mA, bears 6 mA")

    phone.chooses("B", "devices", "0", "type")

    expect(main).to_contain_text("Pass: DC up to 12 mA, opens at 200 mA")
    expect(page.locator(f"{TREE} .shape[data-outcome=fail]")).to_have_count(0)
    expect(page.locator(f"{TREE} .shape[data-outcome=pass]")).to_have_count(3)


def test_the_drawing_is_there_in_words(phone: Phone, page: Page) -> None:
    """As lists within lists, in the same order, each device with what hangs on it."""
    phone.open(PLACE)
    phone.waits_for("fail")
    lists = page.locator(f"{TREE} > ul")

    expect(page.locator(f"{TREE} > svg")).to_have_attribute("aria-hidden", "true")
    expect(lists.locator(":scope > li")).to_have_count(1)
    expect(lists.locator(":scope > li > ul > li")).to_have_count(2)
    expect(lists.locator(":scope > li > ul > li > ul > li").first).to_contain_text("6 mA detection")


@pytest.mark.parametrize("width", [320, 412])
def test_every_line_of_the_drawing_fits(phone: Phone, page: Page, width: int) -> None:
    """No text runs out of the figure, and the page does not scroll sideways."""
    page.set_viewport_size({"width": width, "height": 900})
    phone.open(PLACE)
    phone.waits_for("fail")
    settle(page)
    right = page.locator(TREE).bounding_box()
    texts = page.locator(f"{TREE} > svg tspan")
    ends = texts.evaluate_all("(all) => all.map((one) => one.getBoundingClientRect().right)")

    assert right is not None
    assert max(ends) <= right["x"] + right["width"] + 1
    assert page_width(page) <= width
