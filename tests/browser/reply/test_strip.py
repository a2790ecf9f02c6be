"""A reading is drawn where it belongs, also with greater letters."""

from __future__ import annotations

from playwright.sync_api import Page

from tests.browser.phone import Phone
from tests.browser.reply.strip_shape import CASE, MEASURE, ROOM, check


def test_a_reading_is_drawn_where_it_belongs(phone: Phone, page: Page) -> None:
    """Limits, figures, words and the mark, each in its place, and no word over another."""
    phone.open(CASE)
    phone.waits_for("pass")
    page.locator(".strip").first.wait_for()

    for letters, words in ROOM.items():
        check(page.evaluate(f"(...arguments) => {{ {MEASURE} }}", letters), *words)
