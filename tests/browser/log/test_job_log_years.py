"""Readings of one device from several days lead to its trend and its next dates."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.log.job_log import JobLog, an_entry, reading
from tests.browser.phone import Phone

TYPE_AC = {"type": "AC", "rated_residual_current": "30 mA"}
VISITS = (
    an_entry(1, device="Way 3", request=reading("60 ms", on="2022-11-01")),
    an_entry(2, device="Way 3", request=reading("103 ms", on="2023-11-01")),
    an_entry(3, device="Way 3", request=reading("182 ms", on="2025-11-01")),
    an_entry(4, device="Way 3", request=reading("15 ms", on="2019-11-01", device=TYPE_AC)),
    an_entry(5, device="Way 3", request=reading("182 ms", on="2025-11-01")),
    an_entry(6, device="Way 4", request=reading("31 ms", on="2025-11-01")),
)


@pytest.fixture
def job_log(phone: Phone, tmp_path: Path) -> JobLog:
    """A log with three visits to one device that was replaced before them."""
    made = JobLog(phone)
    made.open_with(tmp_path, *VISITS)
    return made


def test_a_device_is_followed_over_the_years(job_log: JobLog, page: Page) -> None:
    """One tap leads to the trend of the three readings, without the device that was replaced."""
    links = page.locator("[data-list] .log__link")
    expect(links).to_have_count(1)
    expect(links).to_have_text("Farm shop, Way 3: 3 days from 2022 to 2025")

    links.click()

    expect(page.locator("h1")).to_contain_text("Over the years")
    phone = job_log.phone
    phone.waits_until_running()
    expect(phone.field("history").locator("[data-entry]")).to_have_count(3)
    expect(phone.field("history", "0", "value").locator("input")).to_have_value("60 ms")
    expect(phone.field("label").locator("input")).to_have_value("Way 3")
    expect(phone.results).to_contain_text("rising")


def test_the_next_dates_are_a_calendar_file(job_log: JobLog, page: Page) -> None:
    """The dates are saved as iCalendar (RFC 5545: lines end in CR LF, one VCALENDAR)."""
    page.locator("[data-list] .log__link").click()
    job_log.phone.waits_until_running()
    with page.expect_download() as waiting:
        job_log.phone.results.get_by_role("button", name="Save these dates for a calendar").click()

    text = waiting.value.path().read_bytes().decode("utf-8")
    assert waiting.value.suggested_filename == "next-tests.ics"
    assert text.startswith("BEGIN:VCALENDAR\r\n")
    assert text.endswith("END:VCALENDAR\r\n")
    assert "SUMMARY:Test button: Way 3\r\n" in text
