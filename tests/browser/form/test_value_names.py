"""Over a figure stands how it came about, and measured only where somebody read it off."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import expect

from tests.browser.log.job_log import JobLog, an_entry
from tests.browser.phone import Phone

ROD = "#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
RESISTANCE = "&system=tt&electrode_resistance=200+ohm"
LEAKS = "#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA&measured=6.2+mA"


def test_a_touch_voltage_is_called_calculated(phone: Phone) -> None:
    """200 ohm × 30 mA is 6 V (IEC 60364-4-41, 411.5.3): nobody measured it."""
    phone.open("checkers/earth-electrode/" + ROD + RESISTANCE)
    phone.waits_for("pass")

    expect(phone.results.locator(".figures dt").first).to_have_text("Calculated")
    expect(phone.results.locator(".figures dd").first).to_have_text("6 V")


def test_a_clamp_reading_is_called_measured(phone: Phone) -> None:
    """6.2 mA as it was read off."""
    phone.open("checkers/leakage-budget/" + LEAKS)

    expect(phone.results.locator(".figures dd").first).to_have_text("6.2 mA")
    expect(phone.results.locator(".figures dt").first).to_have_text("Measured")


def test_a_record_of_readings_calls_them_measured(phone: Phone, tmp_path: Path) -> None:
    """With the reply that this build gives, and with one kept before it was said."""
    new, old = an_entry(3), an_entry(4)
    for one in old["reply"]["findings"]:
        one.pop("measured_as", None)
    log = JobLog(phone)
    log.open_with(tmp_path, new, old)
    log.button("Record for print").click()

    expect(phone.page.locator("[data-record]").get_by_text("28 ms (measured)")).not_to_have_count(0)
    expect(phone.page.locator("[data-record]").get_by_text("(value)")).to_have_count(0)
