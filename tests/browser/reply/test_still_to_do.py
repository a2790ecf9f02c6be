"""Nothing that is shown calls it a pass while the code still requires a test."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import expect

from tests.browser.log.job_log import JobLog, an_entry
from tests.browser.phone import PATIENCE, Phone

DEVICE = "#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
RAMP = "&readings.0.test=ramp&readings.0.waveform=ac&readings.0.value=21+mA"
TIME = "&readings.1.test=trip-time&readings.1.multiple=1&readings.1.waveform=ac"
BUTTON = "&readings.2.test=button&readings.2.value=operates"
MISSING = "Still to do: ×1 trip time on AC (BS 7671), test button (BS 7671)."


def test_one_ramp_reading_passes_so_far(phone: Phone) -> None:
    """The bar names what BS 7671 requires, in a shape and tone of its own; below, with clauses."""
    phone.open("checkers/readings/" + DEVICE + RAMP)
    phone.waits_for("pass")

    expect(phone.verdict.locator("[data-word]")).to_have_text("Pass so far")
    expect(phone.verdict.locator("[data-detail]")).to_contain_text(MISSING)
    expect(phone.verdict.locator("svg.shape--so-far")).to_have_count(1)
    expect(phone.verdict).to_have_attribute("data-so-far", "")
    expect(phone.results).to_contain_text("BS 7671:2018+A2:2022, 643.7.1, 643.8")


def test_with_all_that_is_required_it_is_a_pass(phone: Phone) -> None:
    """The word, the shape and the tone change as soon as the last test is there."""
    phone.open("checkers/readings/" + DEVICE + RAMP + TIME + "&readings.1.value=" + BUTTON)
    phone.types("28", "readings", "1", "value")
    phone.waits_for("pass")

    expect(phone.verdict.locator("[data-word]")).to_have_text("Pass")
    expect(phone.verdict.locator("svg.shape--pass")).to_have_count(1)
    expect(phone.verdict).not_to_have_attribute("data-so-far", "")


def test_an_entry_kept_by_an_older_build_is_no_bare_pass(phone: Phone, tmp_path: Path) -> None:
    """Its reply lists nothing, but names the next test that the code asks for."""
    old = an_entry(3)
    del old["reply"]["still_to_do"]
    log = JobLog(phone)
    log.open_with(tmp_path, old)

    expect(log.entries.locator("summary").first).to_contain_text("Pass so far Way 3")
    log.button("Record for print").click()
    expect(phone.page.locator(".sheet__tally")).to_have_text("Pass so far: 1")


def test_a_schedule_counts_such_devices_apart(phone: Phone) -> None:
    """Of three devices that pass, one has all its tests."""
    phone.open("checkers/schedule/")
    phone.waits_for("unfinished")
    text = "Device\tIΔn\tx1\tbutton\nA\t30 mA\t28\tok\nB\t30 mA\t28\t\nC\t30 mA\t31\t\n"
    phone.page.locator("[data-text]").fill(text)
    phone.page.locator("[data-judge]").click()
    phone.waits_for("pass")

    expect(phone.verdict.locator("[data-word]")).to_have_text("Pass so far", timeout=PATIENCE)
    expect(phone.results).to_contain_text("Devices: 1 pass, 2 pass so far, with tests still to do.")
    words = phone.results.locator("[data-rows] .finding__word").all_inner_texts()
    assert words == ["Pass", "Pass so far", "Pass so far"]
