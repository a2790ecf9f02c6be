"""What an older build passed and this one does not is found, listed and told; the record stays."""

from __future__ import annotations

import copy
from pathlib import Path
from typing import Any

from playwright.sync_api import Locator, Page, expect

from tests.browser.host import source_of
from tests.browser.log.job_log import SOUND, JobLog, an_entry, reading
from tests.browser.phone import PATIENCE, Phone

OLD, NEWER = "2026-11-20-0123456789ab", "2099-01-01-0123456789ab"
PUT = """async ([module, entries]) => {
    const { openLog } = await import(module);
    await (await openLog()).change({ what: "put", puts: entries });
}"""


def _passed_once(number: int, value: str, **other: Any) -> dict[str, Any]:
    """Return an entry that was kept as a pass, whatever these checkers say of its reading."""
    entry = an_entry(number, request=reading(value), **other)
    sound = an_entry(number)["reply"]
    return {**entry, "reply": copy.deepcopy(sound)}


def _list(page: Page) -> Locator:
    return page.locator("[data-standing]")


def test_a_pass_that_is_none_any_more_is_listed_and_its_record_stays(
    phone: Phone, page: Page, tmp_path: Path
) -> None:
    """Label, day, both verdicts, the reason and "Retest"; what stands is not named."""
    entries = [
        _passed_once(1, "400 ms", device="Way 1"),
        an_entry(2, device="Way 2"),
        _passed_once(3, "400 ms", device="Way 3", build=NEWER),
    ]
    job_log = JobLog(phone)

    job_log.open_with(tmp_path, *entries)

    expect(_list(page).locator("summary")).to_have_text(
        "1 kept verdict no longer stands", timeout=PATIENCE
    )
    line = _list(page).locator("li")
    for words in (
        "Farm shop, Way 1",
        "24 November 2026",
        "Pass so far → Fail",
        "400 ms",
        "Retest.",
    ):
        expect(line).to_contain_text(words)
    assert job_log.stored() == entries

    line.get_by_role("button", name="Show it").click()
    expect(page.locator("[data-id][open] .kept__lost")).to_have_text(
        "No longer stands: with this build, Fail. Retest."
    )
    job_log.button("Record for print").click()
    record = page.locator("[data-record]")
    expect(record).to_contain_text("1 of these verdicts no longer stands, and is marked.")
    expect(record.locator("article", has_text="Way 1")).to_contain_text("with this build, Fail.")
    expect(record.locator("article", has_text="Way 2")).not_to_contain_text("no longer")


def test_what_was_seen_is_folded_and_stays_within_reach(
    phone: Phone, page: Page, tmp_path: Path
) -> None:
    """The list stands open until the reader has seen it; later a line leads to it."""
    job_log = JobLog(phone)
    job_log.open_with(tmp_path, _passed_once(1, "400 ms"))
    expect(_list(page)).to_have_attribute("open", "", timeout=PATIENCE)

    _list(page).get_by_role("button", name="I have seen these").click()
    expect(_list(page)).not_to_have_attribute("open", "")
    job_log.open()

    summary = _list(page).locator("summary")
    expect(summary).to_have_text("1 kept verdict no longer stands", timeout=PATIENCE)
    expect(_list(page)).not_to_have_attribute("open", "")
    summary.click()
    expect(_list(page).locator("li")).to_contain_text("Pass so far → Fail")


def test_a_request_that_this_build_refuses_is_listed_as_such(
    phone: Phone, page: Page, tmp_path: Path
) -> None:
    """What can no longer be judged is named with the reason, field by field."""
    job_log = JobLog(phone)
    refused = _passed_once(1, "28 ms", device="Way 9")
    refused["request"] = {**refused["request"], "device": {"type": "Z"}}

    job_log.open_with(tmp_path, refused)

    line = _list(page).locator("li")
    expect(line).to_contain_text("Way 9", timeout=PATIENCE)
    expect(line).to_contain_text("Can no longer be judged: device.type: 'Z' is not one of")


def test_the_first_verdict_of_a_new_build_tells_of_the_log(phone: Phone, page: Page) -> None:
    """On any page with a checker the log is judged again by itself, and a word leads to it."""
    phone.open("log/")
    page.locator("[data-log][data-ready]").wait_for(timeout=PATIENCE)
    page.evaluate(PUT, [source_of("log/store/store.js"), [_passed_once(1, "400 ms"), an_entry(2)]])
    page.evaluate(
        "Object.keys(localStorage).filter((key) => key.endsWith('judged again by'))"
        ".forEach((key) => localStorage.removeItem(key))"
    )

    phone.open(SOUND)
    phone.waits_for("pass")

    notice = page.locator(".notice")
    expect(notice).to_contain_text(
        "1 verdict kept in the job log no longer stands", timeout=PATIENCE
    )
    notice.get_by_role("link").click()
    expect(_list(page)).to_have_attribute("open", "", timeout=PATIENCE)


def test_many_are_judged_while_the_page_answers(phone: Phone, page: Page, tmp_path: Path) -> None:
    """The page says how far it is, and what a reader asks meanwhile comes in between."""
    job_log = JobLog(phone)
    many = [_passed_once(1, "400 ms")] + [an_entry(number) for number in range(2, 301)]
    job_log.open_with(tmp_path, *many)
    said = page.locator("[data-standing-said]")
    expect(said).to_contain_text("Judging 300 kept verdicts again", timeout=PATIENCE)

    job_log.entries.first.locator("summary").click()
    job_log.button("Judge again today").click()

    expect(page.locator(".again").first).to_be_visible(timeout=PATIENCE)
    expect(said).to_be_empty(timeout=4 * PATIENCE)
    expect(_list(page).locator("summary")).to_contain_text("1 kept verdict no longer stands")
