"""Keep means kept: it says so when it is true, as long as it is true, and else gives a way out."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, Route, expect

from tests.browser.guard import Guard
from tests.browser.log.job_log import SOUND, JobLog
from tests.browser.phone import Phone
from tests.browser.sampling import sampled

ASKS_FOR_EVER = """
globalThis.asked = 0;
if (navigator.storage) {
  StorageManager.prototype.persist = () => { globalThis.asked += 1; return new Promise(() => {}); };
}
"""
FULL_AT_PUT = """
IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); };
"""
FULL_AT_COMMIT = """
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (...given) {
  const { transaction } = this;
  const full = new DOMException("full", "QuotaExceededError");
  Object.defineProperty(transaction, "error", { value: full });
  transaction.addEventListener("complete", (event) => event.stopImmediatePropagation(), true);
  const request = put.apply(this, given);
  setTimeout(() => transaction.abort());
  return request;
};
"""
NEVER_ANSWERS = """
IDBFactory.prototype.open = () => new EventTarget();
"""
NEVER_ENDS = """
for (const name of ["oncomplete", "onabort"]) {
  Object.defineProperty(IDBTransaction.prototype, name, { set() {} });
}
const listen = IDBTransaction.prototype.addEventListener;
IDBTransaction.prototype.addEventListener = function (kind, ...rest) {
  if (kind !== "complete" && kind !== "abort") {
    listen.call(this, kind, ...rest);
  }
};
"""
# A page that reads without end: whoever wants to write waits for it.
HOLDS = """async () => {
  const all = await indexedDB.databases();
  const { name } = all.find((one) => one.name.endsWith("job log"));
  const request = indexedDB.open(name);
  await new Promise((done) => { request.onsuccess = done; });
  const store = request.result.transaction("entries", "readwrite").objectStore("entries");
  const again = () => { if (!globalThis.letGo) { store.count().onsuccess = again; } };
  again();
}"""
SLOW = 15_000  # milliseconds: longer than a page's patience with its browser


@pytest.fixture
def job_log(phone: Phone) -> JobLog:
    """The job log of a phone that has never seen the site."""
    return JobLog(phone)


def values_of(job_log: JobLog) -> list[str]:
    """Return the values that are in the log, as they were typed."""
    return sorted(one["request"]["readings"][0]["value"] for one in job_log.stored())


def test_a_question_of_the_browser_holds_up_nothing(job_log: JobLog, page: Page) -> None:
    """While the browser's question about storage stands, the next verdict is kept as well."""
    page.add_init_script(ASKS_FOR_EVER)
    job_log.keep(SOUND, "pass", job="Farm shop", device="Way 3")
    job_log.phone.types("410 ms", "readings", "0", "value")
    job_log.panel.locator("[name=device]").fill("Way 4")
    job_log.phone.waits_for("fail")
    job_log.press_keep()

    expect(job_log.told).to_contain_text("Kept in “Farm shop”.")
    assert values_of(job_log) == ["28 ms", "410 ms"]
    assert page.evaluate("globalThis.asked") == 1


@pytest.mark.parametrize("name", sampled(["device", "job", "note"], always=1))
def test_kept_is_said_of_these_labels_alone(job_log: JobLog, name: str) -> None:
    """Another label is another case: what was said of the last one goes."""
    job_log.keep(SOUND, "pass", job="Farm shop", device="Way 3")

    job_log.panel.locator(f"[name={name}]").fill("Another")

    expect(job_log.told).to_be_empty()


@pytest.mark.parametrize(
    "change", sampled(["value", "address", "start again", "choice", "take away"], always=3)
)
def test_kept_is_said_of_this_case_alone(job_log: JobLog, page: Page, change: str) -> None:
    """However the case changes, what was said of the last one goes."""
    job_log.keep(SOUND, "pass", device="Way 3")

    if change == "value":
        job_log.phone.types("410 ms", "readings", "0", "value")
    elif change == "choice":
        job_log.phone.chooses("F", "device", "type")
    elif change == "take away":
        job_log.phone.field("readings", "0").locator("[data-remove]").click()
    elif change == "start again":
        page.locator("[data-clear]").click()
    else:
        page.evaluate("location.hash = 'code=iec'")

    expect(job_log.told).to_be_empty()


def test_kept_stands_while_nothing_changes(job_log: JobLog, page: Page) -> None:
    """What is looked at, and a label typed and put back, leave the case as it was."""
    job_log.keep(SOUND, "pass", job="Farm shop", device="Way 3")
    page.locator("[data-why]").click()
    job_log.phone.field("readings", "0", "value").locator("input").first.focus()

    expect(job_log.told).to_have_text("Kept in “Farm shop”. Open the job log")


def test_a_script_that_does_not_come_is_told(job_log: JobLog, page: Page, guard: Guard) -> None:
    """Without the script that keeps, the page says so, and gives the case as text and as a file."""
    guard.allow("Failed to load resource", "ERR_FAILED")
    page.route("**/log-keep-*.js", lambda route: route.abort())
    job_log.fill(SOUND, "pass", job="Farm shop", device="Way 3", note="Loads off")
    expect(job_log.panel.locator("[data-warning]")).to_contain_text("Nothing can be kept")
    job_log.panel.get_by_role("button", name="Keep this verdict").click()

    expect(job_log.told).to_contain_text("Not kept: a part of this page did not arrive")
    with page.expect_download() as waiting:
        job_log.told.get_by_role("button", name="Save it as a file").click()
    taken = waiting.value.path().read_text(encoding="utf-8")
    for part in ("Farm shop", "Way 3", "Loads off", "Pass so far", "28 ms", "code=gb"):
        assert part in taken


def test_a_script_that_never_answers_is_told(job_log: JobLog, page: Page) -> None:
    """While the script that keeps is waited for, the way out is there."""
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route("**/log-keep-*.js", hold)
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.panel.get_by_role("button", name="Keep this verdict").click()

    expect(job_log.told).to_contain_text("Keeping")
    job_log.told.get_by_role("button", name="Save it as a file").wait_for()
    held[0].continue_()
    expect(job_log.told).to_contain_text("Kept")
    assert values_of(job_log) == ["28 ms"]


def test_what_keeps_is_there_before_it_is_needed(job_log: JobLog, page: Page, guard: Guard) -> None:
    """Once a verdict stands, the network may go: the panel opens and keeps."""
    guard.allow("Failed to load resource", "ERR_FAILED")
    with page.expect_response("**/log-keep-*.js"):
        job_log.page.goto("about:blank")
        job_log.phone.open(SOUND)
    job_log.phone.waits_for("pass")
    page.wait_for_load_state("networkidle")
    page.route("**/*.js", lambda route: route.abort())
    job_log.panel.locator("summary").click()
    job_log.press_keep()

    expect(job_log.told).to_contain_text("Kept")


@pytest.mark.parametrize("fault", [FULL_AT_PUT, FULL_AT_COMMIT])
def test_a_full_disk_is_told_and_nothing_is_half_kept(
    job_log: JobLog, page: Page, fault: str
) -> None:
    """Whenever the room ends, the reason stands there, with ways out, and the log is as it was."""
    page.add_init_script(fault)
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.press_keep()

    expect(job_log.told).to_contain_text("Not kept: the storage of this device is full")
    with page.expect_download() as waiting:
        job_log.told.get_by_role("button", name="Save it as a file").click()
    assert '"28 ms"' in waiting.value.path().read_text(encoding="utf-8")
    assert job_log.stored() == []
    job_log.open()
    expect(page.locator("[data-undo]")).to_be_hidden()


@pytest.mark.slow
def test_a_browser_that_does_not_answer_is_told(job_log: JobLog, page: Page) -> None:
    """Where the database never opens, that is said, with ways out, and never that it is kept."""
    page.add_init_script(NEVER_ANSWERS)
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.panel.get_by_role("button", name="Keep this verdict").click()

    expect(job_log.told).to_contain_text("Keeping")
    job_log.told.get_by_role("button", name="Save it as a file").wait_for(timeout=5000)
    expect(job_log.told).to_contain_text(
        "Not kept on this device: the browser does not answer", timeout=SLOW
    )
    expect(job_log.told.get_by_role("button", name="Save it as a file")).to_be_visible()


@pytest.mark.slow
def test_a_write_that_never_ends_is_not_called_kept(job_log: JobLog, page: Page) -> None:
    """A browser that does not say how a write ended leaves that open, and the ways out."""
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.panel.locator("[data-alive]").wait_for()
    page.evaluate(f"() => {{ {NEVER_ENDS} }}")
    job_log.press_keep()

    expect(job_log.told).to_contain_text("Perhaps not kept", timeout=SLOW)
    expect(job_log.told.get_by_role("button", name="Copy it as text")).to_be_visible()


@pytest.mark.slow
def test_a_log_that_another_page_holds_is_waited_for_no_longer_than_patience(
    job_log: JobLog, page: Page
) -> None:
    """Given up, it is not written later either; once the log is free, another tap keeps it once."""
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.panel.locator("[data-alive]").wait_for()
    page.evaluate(HOLDS)
    job_log.press_keep()
    expect(job_log.told).to_contain_text("Not kept: the browser does not answer", timeout=SLOW)

    page.evaluate("globalThis.letGo = true")
    assert job_log.stored() == []
    job_log.press_keep()
    expect(job_log.told).to_contain_text("Kept")
    assert values_of(job_log) == ["28 ms"]


def test_two_taps_keep_one_verdict(job_log: JobLog, page: Page) -> None:
    """Two taps in the same moment make one entry."""
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.panel.locator("[data-alive]").wait_for()
    page.evaluate(
        "() => { const button = document.querySelector('[data-keep] form button');"
        " button.click(); button.click(); }"
    )

    expect(job_log.told).to_contain_text("Kept")
    assert values_of(job_log) == ["28 ms"]


def test_a_value_whose_verdict_is_not_there_yet_is_kept_with_its_own(
    job_log: JobLog, page: Page
) -> None:
    """A tap right after a keystroke waits for the verdict on what stands there then."""
    job_log.fill(SOUND, "pass", device="Way 3")
    job_log.panel.locator("[data-alive]").wait_for()
    page.evaluate(
        "() => { const box = document.querySelector('[data-field=value] input');"
        " box.value = '410 ms'; box.dispatchEvent(new Event('input', { bubbles: true }));"
        " document.querySelector('[data-keep] form button').click(); }"
    )

    expect(job_log.told).to_contain_text("Kept")
    (kept,) = job_log.stored()
    assert kept["request"]["readings"][0]["value"] == "410 ms"
    assert kept["reply"]["outcome"] == "fail"


def test_what_is_typed_meanwhile_is_neither_kept_nor_lost(job_log: JobLog, page: Page) -> None:
    """What was there when the button was pressed is kept; what came after it stays typed."""
    job_log.fill(SOUND, "pass", job="Farm shop", device="Way 3", note="Loads off")
    job_log.panel.locator("[data-alive]").wait_for()
    page.evaluate(
        "() => { const form = document.querySelector('[data-keep] form');"
        " form.querySelector('button').click();"
        " form.elements.note.value = 'Next';"
        " form.elements.note.dispatchEvent(new Event('input', { bubbles: true })); }"
    )

    expect(job_log.told).to_contain_text("What you typed since is not kept.")
    expect(job_log.panel.locator("[name=note]")).to_have_value("Next")
    (kept,) = job_log.stored()
    assert kept["note"] == "Loads off"
