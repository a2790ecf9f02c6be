"""The record for print: every part is there, legible without colour, and fits a phone."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.log.job_log import REQUEST, JobLog, an_entry, reading
from tests.browser.phone import Phone
from tests.browser.settled import page_width

BLINDED = reading("28 ms", device={"type": "AC", "rated_residual_current": "30 mA"})
ENTRIES = (
    an_entry(3, note="Loads off"),
    an_entry(4, request=reading("400 ms")),
    an_entry(10, request={**BLINDED, "circuit": {"dc_residual": "50 mA"}}),
)

TAPPED = (
    "[data-log] :is(button, a.action, select, input, textarea, .keep > summary, .kept > summary)"
)


@pytest.fixture
def job_log(phone: Phone, tmp_path: Path) -> JobLog:
    """A log of three entries of one job, its record shown."""
    made = JobLog(phone)
    made.open_with(tmp_path, *ENTRIES)
    made.button("Record for print").click()
    return made


def test_the_record_holds_every_part(job_log: JobLog) -> None:
    """Reading, limit, source, evidence, build, cautions, note, and room to sign."""
    sheet = job_log.page.locator("[data-record]")
    text = " ".join(sheet.inner_text().split())
    reply = ENTRIES[1]["reply"]

    for finding in reply["findings"]:
        for part in (finding["measured"], finding["limit"], finding["says"]):
            assert part in text
        for source in finding["sources"]:
            assert f"{source['document']}, {source['edition']}, {source['clause']}" in text
    assert "(another published text quotes it)" in text
    assert str(ENTRIES[1]["build"]) in text
    for caution in reply["cautions"]:
        assert caution in text
    assert reply["local_note"] in text
    assert "Loads off" in text
    assert "Type: A: and pulsating direct" in text
    for word in ("Tested by", "Checked by", "Signature", "Date", "Fail: 2", "Pass so far: 1"):
        assert word in text
    heads = sheet.locator(".sheet__head").all_inner_texts()
    assert [" ".join(head.split()) for head in heads] == [
        "Pass so far Way 3",
        "Fail Way 4",
        "Fail Way 10",
    ]
    assert "Still to do: Test button (BS 7671): BS 7671:2018, 643.10" in text


@pytest.mark.parametrize("width", [320, 412, 794])
def test_the_record_prints_alone_and_fits(job_log: JobLog, width: int) -> None:
    """On paper only the record is left, as wide as the sheet, also from a phone in dark colours."""
    page = job_log.page
    page.emulate_media(media="print", color_scheme="dark")
    page.set_viewport_size({"width": width, "height": 1123})

    expect(page.locator("[data-record]")).to_be_visible()
    for other in (".md-header", ".foot", "[data-list]", "[data-job]", ".sheet__controls", "h1"):
        expect(page.locator(other).first).to_be_hidden()
    assert page_width(page) <= width


def test_verdicts_are_told_apart_without_colour(job_log: JobLog) -> None:
    """In print every verdict is a word and a shape, black on white."""
    page = job_log.page
    page.emulate_media(media="print")
    verdict = page.locator(".sheet__head .sheet__verdict").nth(1)

    expect(verdict).to_have_text("Fail")
    expect(verdict.locator("svg.shape--fail")).to_have_count(1)
    expect(verdict).to_have_css("color", "rgb(0, 0, 0)")


def test_the_log_fits_a_phone(job_log: JobLog, page: Page) -> None:
    """At 320 pixels nothing is wider than the screen, and what is tapped is large enough."""
    page.set_viewport_size({"width": 320, "height": 915})
    for entry in job_log.entries.all():
        entry.locator("summary").first.click()
    job_log.button("Edit").first.click()
    page.locator("summary", has_text="Take in a saved log").click()

    assert page_width(page) <= 320
    sizes = page.locator(TAPPED).evaluate_all(
        "(all) => all.filter((one) => one.offsetParent !== null)"
        ".map((one) => [one.textContent.slice(0, 30), one.getBoundingClientRect().height])"
    )
    assert sizes
    assert [one for one in sizes if one[1] < 48] == []


def test_a_kept_plan_reads_as_a_plan(phone: Phone, tmp_path: Path) -> None:
    """In the list, in the record and in its count: never as a pass, nor as what cannot be said."""
    request = {key: REQUEST[key] for key in ("code", "on", "device")}
    plan = an_entry(5, checker="test-plan", request=request)
    kept = JobLog(phone)
    kept.open_with(tmp_path, plan)

    expect(kept.entries.locator("summary").first).to_have_text(re.compile("^Plan Way 5"))
    kept.button("Record for print").click()
    sheet = phone.page.locator("[data-record]")
    expect(sheet.locator(".sheet__tally")).to_have_text("Plan: 1")
    expect(sheet.locator(".sheet__head")).to_have_text("Plan Way 5")
    expect(sheet.locator("[data-outcome=pass]")).to_have_count(0)
    expect(sheet).to_contain_text("Planned for 24 November 2026")
    expect(sheet).not_to_contain_text("Cannot say")
    assert kept.stored() == [plan]
