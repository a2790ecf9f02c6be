"""Where the browser keeps nothing, or has no room, the log says so before anything is lost."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Dialog, Page, expect

from tests.browser.log.job_log import SOUND, JobLog, an_entry
from tests.browser.phone import Phone

REFUSES = """
IDBFactory.prototype.open = () => { throw new DOMException("refused", "SecurityError"); };
"""
FULL = """
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (value) {
  if (value.id) {
    const request = put.call(this, value);
    const { transaction } = this;
    const full = new DOMException("full", "QuotaExceededError");
    request.addEventListener("success", () => transaction.abort());
    Object.defineProperty(transaction, "error", { value: full });
    return request;
  }
  return put.call(this, value);
};
"""
ALMOST_FULL = """
if (navigator.storage) {
  navigator.storage.estimate = async () => ({ quota: 1000000, usage: 900000 });
}
"""
EVERYTHING_STORED = """async () => {
  const done = (request) => new Promise((told) => {
    request.onsuccess = () => told(request.result);
  });
  const all = [];
  for (const { name } of await indexedDB.databases()) {
    const database = await done(indexedDB.open(name));
    for (const store of database.objectStoreNames) {
      all.push(await done(database.transaction(store).objectStore(store).getAll()));
    }
    database.close();
  }
  return JSON.stringify(all);
}"""
LOG = "all.find(({ name }) => name.endsWith('job log'))"
PROMISED = "if (navigator.storage) navigator.storage.persisted = async () => true;"


@pytest.fixture
def job_log(phone: Phone) -> JobLog:
    """The job log of a phone that has never seen the site."""
    return JobLog(phone)


def test_a_browser_that_keeps_nothing_says_so_first(job_log: JobLog, page: Page) -> None:
    """The panel warns before anything is typed; what is kept lives in the page, and is saved."""
    page.add_init_script(REFUSES)
    job_log.fill(SOUND, "pass", device="Way 3")
    expect(job_log.panel.locator("[data-warning]")).to_contain_text(
        "Nothing is kept on this device"
    )
    job_log.press_keep()
    expect(job_log.told).to_contain_text("Not kept on this device: this browser keeps nothing")
    expect(job_log.told.get_by_role("button", name="Save it as a file")).to_be_visible()

    job_log.told.get_by_role("link", name="Open the job log").click()

    expect(job_log.entries).to_have_count(1)
    expect(page.locator("[data-log] [data-warning]")).to_contain_text(
        "lost when this page is closed"
    )
    with page.expect_download():
        job_log.button("Save as JSON").click()


def test_leaving_asks_first_where_nothing_is_kept(job_log: JobLog, page: Page) -> None:
    """With entries that live in the page alone, the browser asks before the page goes."""
    asked: list[str] = []
    page.add_init_script(REFUSES)
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.press_keep()
    expect(job_log.told).to_contain_text("This page alone holds it")

    def leave(dialog: Dialog) -> None:
        asked.append(dialog.type)
        dialog.accept()

    page.on("dialog", leave)
    with page.expect_event("close"):
        page.close(run_before_unload=True)

    assert asked == ["beforeunload"]


def test_a_full_storage_loses_nothing(job_log: JobLog, page: Page) -> None:
    """Where writing fails for want of room, what was typed stays, and the verdict can be saved."""
    page.add_init_script(FULL)
    job_log.fill(SOUND, "pass", job="Farm shop", device="Way 3", note="Loads off")
    job_log.press_keep()

    expect(job_log.told).to_contain_text("Not kept: the storage of this device is full")
    expect(job_log.panel.locator("[name=note]")).to_have_value("Loads off")
    with page.expect_download() as waiting:
        job_log.told.get_by_role("button", name="Save it as a file").click()
    assert waiting.value.suggested_filename.startswith("job-log-way-3")
    assert '"28 ms"' in waiting.value.path().read_text(encoding="utf-8")
    job_log.open()
    expect(job_log.entries).to_have_count(0)


def test_little_room_is_told_before(job_log: JobLog, page: Page) -> None:
    """With next to no space left the panel says so before anything is typed."""
    page.add_init_script(ALMOST_FULL)
    job_log.fill(SOUND, "pass")

    expect(job_log.panel.locator("[data-warning]")).to_contain_text("almost no space left")


@pytest.mark.slow
@pytest.mark.first_visit
def test_storage_that_is_not_promised_is_told(job_log: JobLog, page: Page) -> None:
    """Unless the browser promises to keep the log, as no private window does, it is said."""
    job_log.fill(SOUND, "pass")
    expect(job_log.panel.locator("[data-warning]")).to_contain_text("private window")

    page.add_init_script(PROMISED)
    job_log.fill(SOUND, "pass")
    expect(job_log.panel.locator("[data-alive]")).to_have_count(1)
    expect(job_log.panel.locator("[data-warning]")).to_be_empty()


def test_what_was_deleted_is_gone_after_a_day(job_log: JobLog, page: Page, tmp_path: Path) -> None:
    """A day later nothing can be undone any more: deleted names are gone from the device."""
    job_log.open_with(tmp_path, an_entry(3, device="Way of all flesh"))
    job_log.entries.first.locator("summary").click()
    job_log.button("Delete").click()
    expect(job_log.entries).to_have_count(0)
    assert "Way of all flesh" in page.evaluate(EVERYTHING_STORED)

    page.add_init_script("const now = Date.now; Date.now = () => now() + 25 * 60 * 60 * 1000;")
    job_log.open()

    expect(page.locator("[data-undo]")).to_be_hidden()
    assert "Way of all flesh" not in page.evaluate(EVERYTHING_STORED)


def test_a_log_of_a_newer_build_is_left_alone(job_log: JobLog, page: Page) -> None:
    """A database of a later version is neither read nor harmed, and the reader is told."""
    job_log.open()
    page.evaluate(
        "async () => { const all = await indexedDB.databases();"
        f" const {{ name, version }} = {LOG};"
        " await new Promise((done) => { const request = indexedDB.open(name, version + 1);"
        " request.onsuccess = () => { request.result.close(); done(); }; }); }"
    )
    page.reload()

    expect(page.locator("[data-log] [data-warning]")).to_contain_text("newer build of this site")
    version = page.evaluate(f"indexedDB.databases().then((all) => {LOG}.version)")
    assert version == 2
