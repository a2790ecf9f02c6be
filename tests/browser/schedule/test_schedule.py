"""A whole schedule is judged on the phone itself: by file, paste or drop, with a way to stop."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest
from playwright.sync_api import Download, FilePayload, expect

from tests.browser.axe import AXE
from tests.browser.phone import PATIENCE, Phone
from tests.browser.settled import page_width

PAGE = "checkers/schedule/"
BOARD = (
    "Board DB1;;;\nCircuit;RCD;IΔn (mA);x1 (ms)\n1 Sockets;RCBO A;30;28,5\n"
    "2 <b>Kitchen</b>;RCBO A;30;410\n3;RCBO A;30;not completed\n4 spare;;;\n=1+1;RCBO A;30;31\n"
)
MANY = "Device,IΔn,x1\n" + "".join(f"RCD {n},30 mA,{9 + n % 50}\n" for n in range(10_000))


def filed(text: str, name: str = "board.csv", encoding: str = "utf-8") -> FilePayload:
    """Return a file as a picker hands it over."""
    return {"name": name, "mimeType": "text/csv", "buffer": text.encode(encoding)}


@pytest.fixture
def at_schedule(phone: Phone) -> Phone:
    """The page for a whole schedule, with its scripts running."""
    phone.open(PAGE)
    phone.waits_for("unfinished")
    return phone


def said(phone: Phone) -> str:
    """Return what the page says of how far it is."""
    return phone.page.locator("[data-said]").inner_text()


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16", "utf-8-sig"])
def test_a_file_is_judged_without_leaving_the_phone(at_schedule: Phone, encoding: str) -> None:
    """Totals, the worst row first, what the columns were taken for, and every row."""
    at_schedule.page.locator("[data-file]").set_input_files([filed(BOARD, encoding=encoding)])
    at_schedule.waits_for("fail")
    results = at_schedule.results

    expect(results).to_contain_text(
        "Devices: 1 fail, 1 cannot be judged, 2 pass so far, with tests still to do."
    )
    first = results.locator("[data-first] .finding").first
    expect(first).to_contain_text("Line 4: 2 <b>Kitchen</b>")
    expect(first).to_contain_text("Next:")
    expect(first.locator("svg.shape--fail")).to_have_count(1)
    expect(results.locator("[data-mapping] tbody tr")).to_have_count(4)
    results.locator("#schedule-which").select_option("all")
    expect(results.locator("[data-rows] .finding")).to_have_count(7)


def test_pasted_rows_are_judged(at_schedule: Phone) -> None:
    """Cells copied from a spreadsheet come with tabs between them."""
    at_schedule.page.locator("[data-text]").fill("Device\tIΔn\tx1\nRCD 1\t30 mA\t28\n")
    at_schedule.page.locator("[data-judge]").click()

    at_schedule.waits_for("pass")


def test_a_file_can_be_dropped(at_schedule: Phone) -> None:
    """On the place where the file picker stands."""
    at_schedule.page.evaluate(
        """text => {
          const data = new DataTransfer();
          data.items.add(new File([text], "dropped.csv", { type: "text/csv" }));
          document.querySelector("[data-drop]").dispatchEvent(
            new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
        }""",
        BOARD,
    )

    at_schedule.waits_for("fail")


def test_ten_thousand_rows_leave_the_page_alive_and_can_be_stopped(at_schedule: Phone) -> None:
    """While they are judged the page scrolls, opens and answers; stopping says where it stopped."""
    page = at_schedule.page
    page.locator("[data-file]").set_input_files([filed(MANY)])
    expect(page.locator("[data-said]")).to_contain_text("rows so far", timeout=PATIENCE)
    page.locator("details.further summary").first.click()

    expect(page.locator("[data-so-far]")).to_be_visible()
    expect(page.locator("[data-inputs]")).to_be_visible()
    page.locator("[data-stop]").click()
    expect(page.locator("[data-said]")).to_contain_text("Stopped after line")
    expect(at_schedule.verdict).to_contain_text("Nothing is said of the rows after line")
    expect(at_schedule.verdict).not_to_have_attribute("data-outcome", "pass")
    expect(page.locator("[data-judge]")).to_be_visible()


def test_a_run_that_was_stopped_can_be_begun_again(at_schedule: Phone) -> None:
    """Nothing of the stopped one is left in it."""
    page = at_schedule.page
    page.locator("[data-file]").set_input_files([filed(MANY)])
    expect(page.locator("[data-said]")).to_contain_text("rows so far", timeout=PATIENCE)
    page.locator("[data-stop]").click()
    expect(page.locator("[data-said]")).to_contain_text("Stopped")
    page.locator("[data-file]").set_input_files([filed(BOARD)])
    at_schedule.waits_for("fail")

    assert said(at_schedule) == "7 rows read."


@pytest.mark.parametrize("form", ["csv", "json", "html"])
def test_what_was_found_can_be_saved(at_schedule: Phone, form: str) -> None:
    """Every row is in the file, and nothing in it runs."""
    at_schedule.page.locator("[data-file]").set_input_files([filed(BOARD)])
    at_schedule.waits_for("fail")
    with at_schedule.page.expect_download() as download:
        at_schedule.page.locator(f"[data-save={form}]").click()
    text = _text_of(download.value)

    assert download.value.suggested_filename == f"board-judged.{form}"
    if form == "csv":
        rows = list(csv.reader(io.StringIO(text.removeprefix("\ufeff")), delimiter=";"))
        assert len(rows) == 7
        assert rows[6][7] == "'=1+1"
    elif form == "json":
        assert [row["line"] for row in json.loads(text)["rows"]] == list(range(1, 8))
    else:
        assert text.startswith("<!doctype html>")
        assert text.rstrip().endswith("</html>")
        assert "<b>Kitchen" not in text


def _text_of(download: Download) -> str:
    return Path(download.path()).read_text(encoding="utf-8")


def test_a_column_can_be_corrected(at_schedule: Phone) -> None:
    """What its heading does not tell, a person says; then it is judged anew."""
    at_schedule.page.locator("[data-text]").fill("Device,IΔn,kitchen\nRCD 1,30 mA,28\n")
    at_schedule.page.locator("[data-judge]").click()
    at_schedule.waits_for("cannot-say")
    at_schedule.page.get_by_label("Column 3, kitchen").select_option("trip time ×1 (ms)")
    at_schedule.page.get_by_role("button", name="Judge with these meanings").click()

    at_schedule.waits_for("pass")
    expect(at_schedule.results.locator("[data-mapping]")).to_contain_text("trip time ×1 (ms)")


def test_what_holds_for_every_row_is_used(at_schedule: Phone) -> None:
    """A rating that no row states may stand beside the file."""
    at_schedule.page.locator("details.further summary").first.click()
    at_schedule.types("30 mA", "device", "rated_residual_current")
    at_schedule.page.locator("[data-text]").fill("Device,x1\nRCD 1,28\n")
    at_schedule.page.locator("[data-judge]").click()

    at_schedule.waits_for("pass")


def test_a_file_that_is_no_schedule_says_what_to_do(at_schedule: Phone) -> None:
    """Nothing passes, and nothing breaks."""
    at_schedule.page.locator("[data-file]").set_input_files([filed("\0\1\2" * 500, "x.bin")])
    at_schedule.waits_for("cannot-say")

    expect(at_schedule.verdict).to_contain_text("No row of headings was recognised")


def test_an_example_opens_with_its_case(phone: Phone) -> None:
    """The text stands in the address, behind the # that never leaves the device."""
    phone.open(PAGE)
    phone.waits_for("unfinished")
    phone.page.locator(".md-content a[href*='#code=']").first.click()

    phone.waits_for("fail")
    expect(phone.page.locator("[data-first]")).to_contain_text("2 Kitchen")


def test_axe_finds_nothing_on_a_page_full_of_rows(at_schedule: Phone) -> None:
    """Mapping, rows and buttons keep the accessibility rules, with every row shown."""
    page = at_schedule.page
    page.locator("[data-file]").set_input_files([filed(BOARD)])
    at_schedule.waits_for("fail")
    page.locator("#schedule-which").select_option("all")
    page.locator("details.further summary").first.click()
    page.evaluate(AXE.read_text(encoding="utf-8"))
    report = page.evaluate("axe.run(document, { resultTypes: ['violations'] })")

    assert [(one["id"], [n["target"] for n in one["nodes"]]) for one in report["violations"]] == []


def test_the_page_fits_a_narrow_phone(at_schedule: Phone) -> None:
    """Nothing has to be scrolled sideways at 320 pixels."""
    page = at_schedule.page
    page.set_viewport_size({"width": 320, "height": 640})
    page.locator("[data-file]").set_input_files([filed(BOARD)])
    at_schedule.waits_for("fail")

    assert page_width(page) <= 320
