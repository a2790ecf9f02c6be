"""A value is given back in the characters it was typed in, by whatever way it comes back."""

from __future__ import annotations

from urllib.parse import urlencode

import pytest
from playwright.sync_api import expect

from tests.browser.log.job_log import DEVICE, READING, JobLog
from tests.browser.phone import Phone

TYPED = ("0,03 A", ">300", ">  300 ms", "0.0280 s", "028", "28 mSec", "½", "1/2", "28+1", "5 %")
PLACES = {
    "readings": ("readings", "0", "value"),
    "explain": ("readings", "0", "value"),
    "series": ("loads", "0", "dc_residual"),
    "leakage-budget": ("measured",),
    "over-the-years": ("history", "0", "value"),
    "dc-bias": ("dc_residual",),
}


@pytest.mark.slow
@pytest.mark.parametrize("slug", PLACES)
def test_what_was_typed_the_moment_before_a_reload_stands_there_after_it(
    phone: Phone, slug: str
) -> None:
    """In every form, to the letter; and so it does where its address is opened."""
    phone.open(f"checkers/{slug}/")
    phone.waits_until_running()
    box = phone.field(*PLACES[slug]).locator("input:not([type=radio])").first
    for text in TYPED:
        phone.unfolds(phone.field(*PLACES[slug]))
        box.fill(text)
        phone.page.reload()
        expect(box).to_have_value(text)
        written = urlencode({".".join(PLACES[slug]): text})
        phone.page.wait_for_function("part => location.href.includes(part)", arg=written)
        phone.waits_until_running()


def test_a_kept_verdict_is_opened_with_the_characters_that_were_typed(phone: Phone) -> None:
    """The log keeps the request as it was typed, and hands it back so."""
    job_log = JobLog(phone)
    job_log.keep(f"checkers/readings/{DEVICE}{READING}&readings.0.value=0,0280++s", "pass")
    job_log.open()
    job_log.entries.first.locator("summary").first.click()
    phone.page.get_by_role("link", name="Open in the checker").click()

    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("0,0280  s")
