"""Two pages of one log at a time: nothing is lost between them, and nothing else is undone."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.host import Host
from tests.browser.log.job_log import SLOW, SOUND, JobLog, an_entry
from tests.browser.phone import Phone

LOG = "all.find(({ name }) => name.endsWith('job log'))"
NEWER = (
    "async () => { const all = await indexedDB.databases();"
    f" const {{ name, version }} = {LOG};"
    " const request = indexedDB.open(name, version + 1);"
    " await new Promise((done) => { request.onsuccess = done; }); request.result.close(); }"
)
DELETED = (
    "async () => { const all = await indexedDB.databases();"
    f" const request = indexedDB.deleteDatabase({LOG}.name);"
    " await new Promise((done) => { request.onsuccess = done; }); }"
)


@pytest.fixture
def job_log(phone: Phone) -> JobLog:
    """The job log in the first page."""
    return JobLog(phone)


@pytest.fixture
def beside(context: BrowserContext, host: Host) -> Iterator[JobLog]:
    """The same job log in a second page."""
    page = context.new_page()
    yield JobLog(Phone(page, host))
    page.close()


def press_both(*logs: JobLog) -> None:
    """Press the button in every page, and wait for what each says."""
    for log in logs:
        log.press_keep()
    for log in logs:
        expect(log.told).to_contain_text("Kept")


def test_two_pages_keep_at_the_same_time(job_log: JobLog, beside: JobLog) -> None:
    """What each keeps is there."""
    job_log.fill(SOUND, "pass", device="Way 3")
    beside.fill(SLOW, "fail", device="Way 4")
    press_both(job_log, beside)

    assert sorted(one["device"] for one in job_log.stored()) == ["Way 3", "Way 4"]


def test_undo_takes_back_what_its_button_names(
    job_log: JobLog, beside: JobLog, tmp_path: Path
) -> None:
    """What another page has changed since is not undone in its place: it is shown first."""
    job_log.open_with(tmp_path, an_entry(3), an_entry(4))
    beside.open()
    beside.entries.first.locator("summary").click()
    beside.button("Delete Way 3").click()
    expect(beside.said).to_contain_text("Deleted Way 3")

    job_log.button("Undo: took in").click()

    expect(job_log.said).to_contain_text("Nothing was undone: another page has changed the log")
    expect(job_log.button("Undo: deleted Way 3")).to_be_visible()
    assert [one["device"] for one in job_log.stored()] == ["Way 4"]
    job_log.button("Undo: deleted Way 3").click()
    expect(job_log.said).to_contain_text("Undone: deleted Way 3")
    assert [one["device"] for one in job_log.stored()] == ["Way 3", "Way 4"]


@pytest.mark.slow
def test_a_newer_build_in_another_page_is_named(job_log: JobLog, beside: JobLog) -> None:
    """A log that a newer build has taken over is not written into, and the reason is said."""
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.panel.locator("[data-alive]").wait_for()
    beside.open()
    beside.page.evaluate(NEWER)
    job_log.press_keep()

    expect(job_log.told).to_contain_text("Not kept: a newer build of this site")
    expect(job_log.told.get_by_role("button", name="Save it as a file")).to_be_visible()


@pytest.mark.slow
def test_a_log_that_was_shut_is_opened_again(job_log: JobLog, beside: JobLog) -> None:
    """What shuts the database, as clearing the site's data does, does not end keeping."""
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.panel.locator("[data-alive]").wait_for()
    beside.open()
    beside.page.evaluate(DELETED)
    job_log.press_keep()

    expect(job_log.told).to_contain_text("Kept")
    assert [one["device"] for one in job_log.stored()] == ["Way 3"]


@pytest.mark.slow
def test_what_was_deleted_elsewhere_can_be_kept_again(job_log: JobLog, beside: JobLog) -> None:
    """“In the log already” is said only of what is there."""
    job_log.keep(SOUND, "pass", device="Way 3")
    beside.open()
    beside.entries.first.locator("summary").click()
    beside.button("Delete Way 3").click()
    expect(beside.entries).to_have_count(0)
    job_log.press_keep()

    expect(job_log.told).to_contain_text("Kept")
    expect(job_log.told).not_to_contain_text("already")
    assert [one["device"] for one in job_log.stored()] == ["Way 3"]


def test_the_page_of_the_log_follows_another(job_log: JobLog, beside: JobLog, page: Page) -> None:
    """Come back to, the log shows what was kept in another page meanwhile."""
    job_log.open()
    beside.keep(SOUND, "pass", device="Way 3")
    page.evaluate("dispatchEvent(new Event('focus'))")

    expect(job_log.entries).to_have_count(1)
