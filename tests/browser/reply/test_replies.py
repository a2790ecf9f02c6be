"""Replies come by the short way, and by the usual one where there is no other."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from tests.browser.phone import Phone
from tests.browser.starts import visit


def _by_the_usual_way(page: Page) -> int:
    heard = page.evaluate("globalThis.heard")
    return sum(one["said"] == "number" for one in heard)


@pytest.mark.usefixtures("notes")
def test_a_verdict_comes_by_the_channel(phone: Phone, page: Page) -> None:
    """Once the worker has heard the page there, its own messages carry no reply."""
    visit(phone)
    before = _by_the_usual_way(page)

    phone.field("readings", "0", "value").locator("input").fill("500")
    phone.waits_for("fail")

    assert _by_the_usual_way(page) == before


@pytest.mark.usefixtures("notes")
def test_a_page_without_channels_gets_its_verdicts(phone: Phone, page: Page) -> None:
    """The worker never hears it on the channel, and replies as ever."""
    page.add_init_script("delete globalThis.BroadcastChannel")
    visit(phone)
    before = _by_the_usual_way(page)

    phone.field("readings", "0", "value").locator("input").fill("500")
    phone.waits_for("fail")

    assert _by_the_usual_way(page) > before
