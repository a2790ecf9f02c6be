"""What is typed and not kept comes back with its tab, also into a newer build, or holds that up."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, FilePayload, Page, expect

from tests.browser.copy.second_build import MARK, make_second_build
from tests.browser.host import Host
from tests.browser.log.job_log import SOUND, JobLog
from tests.browser.phone import PATIENCE, Phone

ROWS = "Device\tIΔn\tkitchen\nRCD 1\t30 mA\t28\n"
# As a paste puts it there: to fill it in takes half a minute.
LONG = """
const box = document.querySelector("[data-text]");
box.value = `Device\\tIΔn\\tx1\\n${`spare ${"x".repeat(1000)}\\t\\t\\n`.repeat(1100)}`;
box.dispatchEvent(new InputEvent("input", { bubbles: true }));
"""
FREE = "navigator.locks.query().then(({ held }) => held.length === 0)"
LABELS = {"job": "Farm shop ", "device": "Way 4", "note": "behind the  counter\nsecond line"}
LESSON = "lessons/why-x1-and-x5/"


@pytest.fixture(scope="module")
def same_day(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a second build, of the day of the first."""
    day = json.loads((site / "build.json").read_text(encoding="utf-8"))["built"]
    return make_second_build(site, tmp_path_factory.mktemp("same-day") / "site", day)


def _schedule(phone: Phone, text: str = ROWS) -> None:
    """Paste rows, and say what their third column holds."""
    phone.open("checkers/schedule/")
    phone.waits_for("unfinished")
    phone.page.locator("[data-text]").fill(text)
    phone.page.locator("[data-judge]").click()
    phone.waits_for("cannot-say")
    phone.page.get_by_label("Column 3, kitchen").select_option("trip time ×1 (ms)")
    phone.page.get_by_role("button", name="Judge with these meanings").click()
    phone.waits_for("pass")


def _labels(phone: Phone) -> None:
    JobLog(phone).fill(SOUND, "pass", **LABELS)


def _has_labels(page: Page) -> None:
    panel = page.locator("[data-keep]")
    expect(panel).to_have_attribute("open", "")
    for name, text in LABELS.items():
        expect(panel.locator(f"[name={name}]")).to_have_value(text)


def _practises(phone: Phone) -> str:
    phone.open("checkers/practice/#level=1&seed=7&code=gb")
    phone.waits_for("unfinished")
    phone.page.locator("[data-step]:not([hidden]) [data-answer]:visible").nth(1).click()
    marks = phone.page.locator("[data-marks] li").first
    marks.wait_for(timeout=PATIENCE)
    return marks.inner_text()


def test_a_reload_brings_back_a_pasted_schedule_and_what_its_columns_are(
    phone: Phone, page: Page
) -> None:
    """With its verdict; a page that is opened anew begins empty."""
    _schedule(phone)

    page.reload()

    phone.waits_for("pass")
    expect(page.locator("[data-text]")).to_have_value(ROWS)
    page.goto("about:blank")
    phone.open("checkers/schedule/")
    expect(page.locator("[data-text]")).to_have_value("")


def test_a_chosen_file_is_judged_again_after_a_reload(phone: Phone, page: Page) -> None:
    """The file itself is no more at hand then; its name is."""
    phone.open("checkers/schedule/")
    phone.waits_for("unfinished")
    text = "Device,IΔn,x1\nKüche,30 mA,28\n".encode("utf-16")
    page.locator("[data-file]").set_input_files(
        FilePayload(name="board.csv", mimeType="text/csv", buffer=text)
    )
    phone.waits_for("pass")

    page.reload()

    phone.waits_for("pass")
    page.locator("#schedule-which").select_option("all")
    expect(page.locator("[data-rows]")).to_contain_text("Küche")


def test_a_reload_brings_back_the_labels_of_a_verdict(phone: Phone, page: Page) -> None:
    """Job, device and note stand in the open panel, to the letter."""
    _labels(phone)

    page.reload()

    _has_labels(page)


def test_coming_back_to_a_page_brings_back_what_was_typed_there(phone: Phone, page: Page) -> None:
    """A look at a table in between costs nothing; a link to the page begins anew."""
    _labels(phone)
    page.evaluate(
        "() => { const a = document.createElement('a'); a.href = '../../limits/';"
        " document.body.append(a); a.click(); }"
    )
    expect(page.locator("h1")).to_contain_text("imit")

    page.go_back()

    phone.waits_for("pass")
    _has_labels(page)


def test_a_lesson_that_was_tried_out_stands_so_after_a_reload(phone: Phone, page: Page) -> None:
    """Its cases have no address of their own."""
    phone.open(LESSON)
    box = page.locator("[data-checker] [data-field=value] input").first
    box.fill("0,031 s")

    page.reload()

    expect(box).to_have_value("0,031 s")


def test_labels_that_are_edited_in_the_log_stand_there_after_a_reload(
    phone: Phone, page: Page
) -> None:
    """The form is open again, with what was typed."""
    job_log = JobLog(phone)
    job_log.keep(SOUND, "pass", device="Way 3")
    job_log.open()
    job_log.entries.first.locator("summary").first.click()
    page.get_by_role("button", name="Edit Way 3").click()
    page.locator("[data-edit] [name=note]").fill("not yet saved")

    page.reload()

    expect(page.locator("[data-edit] [name=note]")).to_have_value("not yet saved")


@pytest.mark.slow
@pytest.mark.first_visit
def test_a_newer_build_finds_in_every_tab_what_was_typed(
    phone: Phone, context: BrowserContext, host: Host, same_day: Path
) -> None:
    """Four tabs: a judged schedule, labels, practice, and the one in which it is chosen."""
    schedule, labels, practice = (Phone(context.new_page(), host) for _ in range(3))
    phone.open("safety/")
    state = phone.page.locator("[data-offline]")
    expect(state).to_contain_text("Works offline", timeout=PATIENCE)
    first = state.inner_text()
    _schedule(schedule)
    _labels(labels)
    mark = _practises(practice)

    host.folder = same_day
    phone.page.reload()
    notice = phone.page.locator(".notice")
    expect(notice).to_contain_text("(second)", timeout=PATIENCE)
    notice.get_by_role("button", name="Use it now").click()

    for one in (phone, schedule, labels, practice):
        expect(one.page.locator("body")).to_contain_text(MARK, timeout=PATIENCE)
    schedule.waits_for("pass")
    expect(schedule.page.locator("[data-text]")).to_have_value(ROWS)
    _has_labels(labels.page)
    expect(practice.page.locator("[data-marks] li").first).to_have_text(mark, use_inner_text=True)
    expect(state).to_contain_text("(second)", timeout=PATIENCE)
    assert first.split("(")[0] == state.inner_text().split("(")[0]
    assert "(second)" not in first


@pytest.mark.slow
@pytest.mark.first_visit
def test_a_newer_build_waits_for_a_schedule_too_long_to_be_carried_over(
    phone: Phone, context: BrowserContext, host: Host, same_day: Path
) -> None:
    """It says so where it is chosen; once the page that holds it is closed, it takes over."""
    schedule = Phone(context.new_page(), host)
    phone.open("safety/")
    expect(phone.page.locator("[data-offline]")).to_contain_text("Works offline", timeout=PATIENCE)
    schedule.open("checkers/schedule/")
    schedule.waits_for("unfinished")
    schedule.page.evaluate(LONG)

    host.folder = same_day
    phone.page.reload()
    notice = phone.page.locator(".notice")
    notice.get_by_role("button", name="Use it now").click(timeout=PATIENCE)

    expect(notice).to_contain_text("waits: an open page of this site holds a schedule")
    expect(schedule.page.locator("body")).not_to_contain_text(MARK)
    schedule.page.close()
    phone.page.wait_for_function(FREE)
    notice.get_by_role("button", name="Use it now").click()
    expect(phone.page.locator("body")).to_contain_text(MARK, timeout=PATIENCE)
