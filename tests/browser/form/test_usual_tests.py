"""Lines of readings begun with one tap: what stands in them, and when they are judged."""

from __future__ import annotations

from playwright.sync_api import expect

from tests.browser.phone import Phone

CHECKER = "checkers/readings/"
DEVICE = "#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
AT_ONE = "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"


def test_a_usual_test_is_one_tap_and_counts_once_something_is_typed(phone: Phone) -> None:
    """A line begun with a usual test is named as empty, then judged; nothing typed is left out."""
    phone.open(CHECKER + DEVICE)
    phone.waits_for("unfinished")
    phone.page.get_by_role("button", name="×1 0°").click()
    phone.page.keyboard.type("28")
    phone.waits_for("pass")

    phone.page.get_by_role("button", name="×5 0°").click()
    phone.waits_for("pass")
    expect(phone.verdict).to_contain_text("One reading still empty.")
    expect(phone.page.locator("[data-entry]")).to_have_count(2)

    phone.page.keyboard.type("400")
    phone.waits_for("fail")
    expect(phone.verdict).not_to_contain_text("still empty")
    expect(phone.field("readings", "1").locator("[data-in-words]")).to_contain_text("×5")


def test_a_value_set_without_a_keystroke_is_judged_too(phone: Phone) -> None:
    """A reading that a script or a form filler puts in a line begun with one tap still counts."""
    phone.open(CHECKER + DEVICE + AT_ONE + "&readings.0.value=28")
    phone.waits_for("pass")
    phone.page.get_by_role("button", name="×5 0°").click()

    box = phone.field("readings", "1", "value").locator("input")
    box.evaluate("box => { box.value = '400' }")
    phone.types("29", "readings", "0", "value")

    phone.waits_for("fail")
