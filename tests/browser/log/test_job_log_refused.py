"""Where the browser does not write or read, the log's page says why, and nothing is called done."""

from __future__ import annotations

import copy
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.log.job_log import JobLog, an_entry, reading, written
from tests.browser.phone import PATIENCE, Phone

# As a browser does where the room ends: what was asked seems well, and then all of it is undone.
FULL = """() => {
  const refused = (kind, name, transactionOf) => {
    const before = kind.prototype[name];
    kind.prototype[name] = function (...given) {
      const transaction = transactionOf(this);
      const request = before.apply(this, given);
      const full = new DOMException("full", "QuotaExceededError");
      Object.defineProperty(transaction, "error", { configurable: true, value: full });
      request.addEventListener("success", () => transaction.abort());
      return request;
    };
  };
  ["put", "add", "delete"].forEach((name) =>
    refused(IDBObjectStore, name, ({ transaction }) => transaction));
  refused(IDBCursor, "delete", ({ source }) => source.transaction);
}"""
FULL_BESIDE = """
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (...given) {
  if (this.name === "standings") {
    throw new DOMException("full", "QuotaExceededError");
  }
  return put.apply(this, given);
};
"""
UNREADABLE = """
IDBObjectStore.prototype.getAll = () => { throw new DOMException("worn out", "UnknownError"); };
"""
WHY = "the storage of this device is full"


@pytest.fixture
def job_log(phone: Phone) -> JobLog:
    """The job log of a phone that has never seen the site."""
    return JobLog(phone)


def an_old_entry() -> dict[str, object]:
    """Return an entry that an older build called a pass."""
    passed = copy.deepcopy(an_entry(3)["reply"])
    return {**an_entry(3, request=reading("400 ms")), "reply": passed}


@pytest.mark.parametrize("change", ["delete", "edit", "take in", "rename", "delete job", "undo"])
def test_a_change_that_is_not_written_is_told_and_not_made(
    job_log: JobLog, page: Page, tmp_path: Path, change: str
) -> None:
    """The reason and a way on stand there, the list is as it was, and what was typed stays."""
    job_log.open_with(tmp_path, an_entry(3))
    before = job_log.stored()
    job_log.entries.first.locator("summary").click()
    page.locator("[data-job]").select_option("=Farm shop")
    page.evaluate(FULL)

    if change == "delete":
        job_log.button("Delete Way 3").click()
    elif change == "edit":
        job_log.button("Edit").click()
        job_log.entries.first.locator("[name=device]").fill("Way 4")
        job_log.entries.first.get_by_role("button", name="Save").click()
    elif change == "take in":
        job_log.take_in(written(tmp_path, an_entry(5), name="more.json"))
    elif change == "rename":
        job_log.button("Rename this job").click()
        page.locator("[data-job-work] input").fill("Another")
        job_log.button("Rename").last.click()
    elif change == "delete job":
        job_log.button("Delete this job").click()
    else:
        job_log.button("Undo").click()

    expect(job_log.said).to_contain_text(WHY)
    expect(job_log.said).to_contain_text("Save the log as a file, and free some space.")
    expect(job_log.entries).to_have_count(1)
    assert job_log.stored() == before
    if change == "edit":
        expect(job_log.entries.first.locator("[name=device]")).to_have_value("Way 4")


def test_a_log_that_cannot_be_read_is_not_called_empty(job_log: JobLog, page: Page) -> None:
    """The page says that it cannot read, and not that nothing is kept."""
    page.add_init_script(UNREADABLE)
    job_log.open()

    expect(page.locator("[data-log] > [data-warning]").last).to_contain_text(
        "The log cannot be read"
    )
    expect(page.locator("[data-list]")).not_to_contain_text("Nothing is kept yet")


def test_a_log_without_room_still_shows_what_it_holds(
    job_log: JobLog, page: Page, tmp_path: Path
) -> None:
    """Old changes that cannot be forgotten for want of room do not hide what is kept."""
    job_log.open_with(tmp_path, an_entry(3))
    page.add_init_script(f"({FULL})()")
    page.add_init_script("const now = Date.now; Date.now = () => now() + 25 * 60 * 60 * 1000;")
    job_log.open()

    expect(job_log.entries).to_have_count(1)
    expect(page.locator("[data-log] > [data-warning]").last).not_to_contain_text("Nothing is kept")


def test_what_no_longer_stands_is_listed_where_that_cannot_be_noted(
    job_log: JobLog, page: Page, tmp_path: Path
) -> None:
    """A pass that is none is told of though its new verdict finds no room, and so is that."""
    page.add_init_script(FULL_BESIDE)
    job_log.open_with(tmp_path, an_old_entry())

    standing = page.locator("[data-standing]")
    expect(standing.locator("summary")).to_have_text(
        "1 kept verdict no longer stands", timeout=PATIENCE
    )
    told = page.locator("[data-standing-said]")
    expect(told).to_contain_text(f"what was found could not be kept: {WHY}")
    standing.get_by_role("button", name="I have seen these").click()
    expect(told).to_contain_text("It could not be noted that you have seen these")
    expect(standing).to_have_attribute("open", "")


def test_a_verdict_judged_again_is_kept_once(job_log: JobLog, tmp_path: Path) -> None:
    """Two taps on one button make one entry."""
    job_log.open_with(tmp_path, an_old_entry())
    job_log.entries.first.locator("summary").click()
    job_log.button("Judge again today").click()
    again = job_log.entries.first.locator(".again").first
    again.get_by_role("button", name="Keep this verdict too").wait_for(timeout=PATIENCE)
    again.get_by_role("button", name="Keep this verdict too").evaluate(
        "(button) => { button.click(); button.click(); }"
    )

    expect(job_log.said).to_contain_text("Kept beside the first one.")
    expect(job_log.entries).to_have_count(2)
    assert len(job_log.stored()) == 2
