"""What any checker says can be kept, brought back and laid out; by keyboard and screen reader."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from checkers.catalogue import CHECKERS
from tests.browser.axe import AXE
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.log.job_log import SOUND, JobLog, an_entry, reading
from tests.browser.phone import PHONE, Phone

EXAMPLES = [(checker.slug, example) for checker in CHECKERS for example in checker.examples]


def test_every_example_can_be_kept_and_laid_out(phone: Phone, page: Page, tmp_path: Path) -> None:
    """Replies of every checker are taken in from a file, saved to CSV and laid out in full."""
    entries = [
        an_entry(number, device=example.title, checker=slug, request=dict(example.request))
        for number, (slug, example) in enumerate(EXAMPLES)
    ]
    job_log = JobLog(phone)
    job_log.open_with(tmp_path, *entries)
    path = job_log.saved("csv", tmp_path)
    job_log.take_in(path)
    expect(job_log.said).to_contain_text(f"0 new, {len(entries)} here already")

    job_log.button("Record for print").click()

    expect(page.locator("[data-record] article")).to_have_count(len(entries))
    assert page.locator("[data-record] pre").count() == 0, "laid out raw"


@pytest.mark.slow
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(
    browser: Browser, host: Host, guard: Guard, scheme: str, tmp_path: Path
) -> None:
    """No rule is broken under a checker, in the list, in an edit, or on the record."""
    context = browser.new_context(**PHONE, color_scheme=scheme)  # type: ignore[arg-type]
    guard.watch(context)
    job_log = JobLog(Phone(context.new_page(), host))
    page = job_log.page
    job_log.fill(SOUND, "pass")
    found = _complaints(page)
    job_log.open_with(tmp_path, an_entry(3), an_entry(4, request=reading("400 ms")))
    for entry in job_log.entries.all():
        entry.locator("summary").first.click()
    job_log.button("Edit").first.click()
    page.locator("[data-job]").select_option("=Farm shop")
    job_log.button("Rename this job").click()
    job_log.button("Record for print").click()
    found += _complaints(page)
    context.close()

    assert found == []


def _complaints(page: Page) -> list[object]:
    page.evaluate(AXE.read_text(encoding="utf-8"))
    report = page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
    return [(one["id"], one["nodes"][0]["html"]) for one in report["violations"]]


def test_a_verdict_is_kept_and_edited_by_keyboard(phone: Phone, page: Page) -> None:
    """Every step works with the keyboard alone, and focus is never lost."""
    job_log = JobLog(phone)
    job_log.fill(SOUND, "pass")
    job_log.panel.locator("[data-alive] [name=job]").focus()
    page.keyboard.type("Farm shop")
    page.keyboard.press("Tab")
    page.keyboard.type("Way 3")
    page.keyboard.press("Enter")
    expect(job_log.told).to_contain_text("Kept in “Farm shop”.")

    job_log.open()
    job_log.entries.first.locator("summary").focus()
    page.keyboard.press("Enter")
    expect(job_log.button("Edit")).to_be_visible()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator(":focus")).to_have_attribute("name", "job")
    page.keyboard.press("Tab")
    page.keyboard.type("Way 4")
    page.keyboard.press("Enter")

    expect(job_log.said).to_have_text("Saved.")
    expect(page.locator("summary:focus")).to_contain_text("Way 4")
