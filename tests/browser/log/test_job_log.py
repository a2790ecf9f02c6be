"""A verdict that was kept stays on the device, can be edited, deleted, and brought back."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.copy.second_build import MARK, make_second_build
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.log.job_log import SOUND, JobLog, an_entry
from tests.browser.phone import PATIENCE, Phone

SCRIPT_OF_THE_PAGE = "document.querySelector('script[src$=\"/page.js\"]').src"
CANNOT_READ = "checkers/readings/#code=gb&readings.0.value=hello"


@pytest.fixture
def job_log(phone: Phone) -> JobLog:
    """The job log of a phone that has never seen the site."""
    return JobLog(phone)


def test_a_kept_verdict_survives_a_reload(job_log: JobLog, page: Page) -> None:
    """After a reload the log shows the verdict under its job, with labels, day and limit."""
    job_log.keep(SOUND, "pass", job="Farm shop", device="Board 1, way 3", note="Loads off")
    job_log.open()
    page.reload()

    entry = job_log.entries.first
    expect(page.locator("[data-list] h2")).to_have_text("Farm shop")
    expect(entry).to_contain_text("Pass so far Board 1, way 3")
    expect(entry).to_contain_text("Still to do: test button (BS 7671).")
    expect(entry).to_contain_text("24 November 2026")
    entry.locator("summary").click()
    expect(entry).to_contain_text("Loads off")
    expect(entry).to_contain_text("≤ 300 ms")
    (stored,) = job_log.stored()
    assert stored["request"]["readings"][0]["value"] == "28 ms"
    assert stored["reply"]["outcome"] == "pass"


def test_labels_are_edited_and_the_edit_undone(job_log: JobLog, page: Page, tmp_path: Path) -> None:
    """New labels stand after a reload, and undo after that brings the old ones back."""
    job_log.open_with(tmp_path, an_entry(3))
    job_log.entries.first.locator("summary").click()
    job_log.button("Edit").click()
    job_log.entries.first.locator("[name=device]").fill("Way 4")
    job_log.entries.first.get_by_role("button", name="Save").click()
    expect(job_log.said).to_have_text("Saved.")
    page.reload()
    expect(job_log.entries.first).to_contain_text("Way 4")

    job_log.button("Undo").click()

    expect(job_log.said).to_contain_text("Undone")
    expect(job_log.entries.first).to_contain_text("Way 3")


def test_what_was_deleted_comes_back(job_log: JobLog, page: Page, tmp_path: Path) -> None:
    """Deleted is gone, also after a reload; undo brings the very same entry back."""
    job_log.open_with(tmp_path, an_entry(3))
    before = job_log.stored()
    job_log.entries.first.locator("summary").click()
    job_log.button("Delete Way 3").click()
    expect(job_log.entries).to_have_count(0)
    page.reload()
    expect(page.locator("[data-list]")).to_contain_text("Nothing is kept yet")

    job_log.button("Undo").click()

    expect(job_log.entries).to_have_count(1)
    assert job_log.stored() == before


def test_a_job_is_renamed_and_deleted_as_a_whole(
    job_log: JobLog, page: Page, tmp_path: Path
) -> None:
    """Both act on every entry of the chosen job, and on no other."""
    job_log.open_with(tmp_path, an_entry(3), an_entry(1, job="School"), an_entry(2, job="School"))
    page.locator("[data-job]").select_option("=School")
    expect(job_log.entries).to_have_count(2)
    job_log.button("Rename this job").click()
    page.locator("[data-job-work] input").fill("Village school")
    job_log.button("Rename").last.click()
    expect(page.locator("[data-job]")).to_have_value("=Village school")

    job_log.button("Delete this job").click()

    expect(job_log.said).to_contain_text("Deleted Village school with 2 entries")
    expect(job_log.entries).to_have_count(1)
    expect(job_log.entries.first).to_contain_text("Way 3")


def test_one_verdict_is_kept_once(job_log: JobLog) -> None:
    """Pressing again says that it is in the log; another note makes another entry."""
    job_log.keep(SOUND, "pass", device="Way 3")
    job_log.press_keep()
    expect(job_log.told).to_contain_text("in the log already")
    job_log.panel.locator("[name=note]").fill("Read again")
    job_log.press_keep()
    expect(job_log.told).to_contain_text("Kept")

    job_log.open()
    expect(job_log.entries).to_have_count(2)


def test_without_a_verdict_nothing_is_kept(job_log: JobLog) -> None:
    """An unfinished form keeps nothing, and says so."""
    job_log.fill(CANNOT_READ, "unfinished", device="Way 3")
    job_log.press_keep()

    expect(job_log.told).to_contain_text("no verdict yet")
    job_log.open()
    expect(job_log.entries).to_have_count(0)


def test_text_from_a_reader_is_never_markup(job_log: JobLog, page: Page, tmp_path: Path) -> None:
    """A label that looks like markup is shown as it was typed, and runs nothing."""
    bad = '<img src=x onerror="window.ran = true"><b>Way</b>'
    job_log.open_with(tmp_path, an_entry(3, job=bad, device=bad, note=bad, build=bad))
    job_log.entries.first.locator("summary").click()
    job_log.button("Record for print").click()

    expect(page.locator("[data-record]")).to_contain_text(bad)
    expect(page.locator("[data-list] h2")).to_have_text(bad)
    assert page.locator("[data-log] img, [data-log] b").count() == 0
    assert page.evaluate("window.ran") is None


@pytest.mark.slow
@pytest.mark.first_visit
def test_the_log_outlives_a_new_build(
    phone: Phone, host: Host, site: Path, tmp_path: Path, guard: Guard
) -> None:
    """When a newer build has taken over, every entry is there, with the build that judged it."""
    job_log, page = JobLog(phone), phone.page
    job_log.open_with(tmp_path, an_entry(3))
    before = job_log.stored()
    expect(page.locator("[data-offline]")).to_contain_text("Works offline", timeout=PATIENCE)
    host.folder = make_second_build(site, tmp_path / "site")
    page.reload()
    with page.expect_navigation():
        page.locator(".notice").get_by_role("button", name="Use it now").click(timeout=PATIENCE)
    expect(page.locator("body")).to_contain_text(MARK)
    expect(job_log.entries).to_have_count(1)
    after = job_log.stored()
    host.stop()
    guard.allow("Failed to load resource", "ERR_")
    page.reload()
    expect(job_log.entries).to_have_count(1)

    assert "/secondbuild/" in page.evaluate(SCRIPT_OF_THE_PAGE)
    assert after == before


def test_a_case_judged_again_shows_both_verdicts(job_log: JobLog, tmp_path: Path) -> None:
    """Judged again, the kept verdict stands beside the new one, each with its day and build."""
    old = an_entry(3, build="2020-01-01-0123456789ab")
    old["reply"]["outcome"] = old["reply"]["findings"][0]["outcome"] = "fail"
    old["reply"]["findings"][0]["says"] = "Above a limit that no longer holds."
    job_log.open_with(tmp_path, old)
    entry = job_log.entries.first
    entry.locator("summary").click()
    expect(entry).to_contain_text("Build 2020-01-01-0123456789ab")

    job_log.button("Judge again today").click()

    again = entry.locator(".again").first
    expect(again).to_contain_text("For its own day, 24 November 2026", timeout=PATIENCE)
    expect(again.locator(".again__verdicts")).to_have_text(
        "Kept:  Fail. Now:  Pass so far; still to do: test button (BS 7671). "
        "The verdict has changed."
    )
    expect(again).to_contain_text("Above a limit that no longer holds.")
    expect(entry.locator(".again").nth(1)).to_contain_text("As if read today")
    again.get_by_role("button", name="Keep this verdict too").click()
    expect(job_log.entries).to_have_count(2)
    assert [one["reply"]["outcome"] for one in job_log.stored()] == ["fail", "pass"]
