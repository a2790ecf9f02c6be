"""Pages fit a phone."""

from __future__ import annotations

from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Page

from build_tools.screenshots.views import read_views
from tests.browser.phone import Phone
from tests.browser.settled import page_width

WIDTHS = (320, 412)


@pytest.mark.parametrize("width", WIDTHS)
def test_a_verdict_fits(phone: Phone, page: Page, width: int) -> None:
    """A form with its findings is not wider than the screen either."""
    page.set_viewport_size({"width": width, "height": 700})
    phone.open(
        "checkers/readings/#code=gb&device.type=AC&device.rated_residual_current=30+mA"
        "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"
        "&readings.0.value=%3E300&circuit.dc_residual=50+mA"
    )
    phone.waits_for("fail")

    assert page_width(page) <= width


def test_pictures_are_taken_of_pages_that_are_there(site_names: set[str]) -> None:
    """Each view's address leads to a page of the site."""
    addresses = (urlsplit(view.address).path for view in read_views().views)

    assert {f"{place}index.html" for place in addresses} <= site_names
