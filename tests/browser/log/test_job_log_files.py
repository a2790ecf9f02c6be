"""The log as a file: read back the same, refused when damaged, harmless in a spreadsheet."""

from __future__ import annotations

import csv
import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.log.job_log import JobLog, an_entry, reading, sum_of, written
from tests.browser.phone import PHONE, Phone

FORMULA = '=HYPERLINK("http://elsewhere.invalid","way 3")'
LONG_CELL = 10_000_000


ENTRIES = (
    an_entry(3, device=FORMULA, note="-2 °C\n;=1+1\n'quoted\""),
    an_entry(4, device="Way 4, übergang", request=reading("400 ms")),
)


@pytest.fixture
def job_log(phone: Phone, tmp_path: Path) -> JobLog:
    """A log of two entries, on its page."""
    made = JobLog(phone)
    made.open_with(tmp_path, *ENTRIES)
    return made


@pytest.fixture
def other(browser: Browser, host: Host, guard: Guard) -> Iterator[JobLog]:
    """The log of another phone."""
    context = browser.new_context(**PHONE)
    guard.watch(context)
    yield JobLog(Phone(context.new_page(), host))
    context.close()


def test_a_file_that_another_program_wrote_is_taken_in(job_log: JobLog) -> None:
    """The format as documented suffices: Python's file gives the very same entries."""
    assert job_log.stored() == [json.loads(json.dumps(entry)) for entry in ENTRIES]


@pytest.mark.parametrize("kind", ["csv", "json"])
def test_a_saved_log_is_the_same_on_another_device(
    job_log: JobLog, other: JobLog, tmp_path: Path, kind: str
) -> None:
    """Saved and taken in on a phone that has never seen the site, every entry is equal."""
    path = job_log.saved(kind, tmp_path)
    other.open()
    other.take_in(path)

    expect(other.said).to_contain_text("2 new, 0 here already")
    assert other.stored() == job_log.stored()
    other.take_in(path)
    expect(other.said).to_contain_text("0 new, 2 here already")
    expect(other.entries).to_have_count(2)


def test_newer_labels_win_and_older_ones_do_not(job_log: JobLog, tmp_path: Path) -> None:
    """A file from before an edit leaves the edit; one from after it brings the edit back."""
    before = job_log.saved("json", tmp_path / "before")
    job_log.entries.last.locator("summary").click()
    job_log.button("Edit").click()
    job_log.entries.last.locator("[name=device]").fill("Way 5")
    job_log.entries.last.get_by_role("button", name="Save").click()
    expect(job_log.said).to_have_text("Saved.")
    after = job_log.saved("json", tmp_path / "after")

    job_log.take_in(before)
    expect(job_log.said).to_contain_text("1 with older labels than here")
    assert "Way 5" in [entry["device"] for entry in job_log.stored()]
    job_log.button("Undo").click()
    expect(job_log.said).to_contain_text("Undone")
    job_log.take_in(after)
    expect(job_log.said).to_contain_text("1 with newer labels than here")
    assert "Way 5" in [entry["device"] for entry in job_log.stored()]


def test_the_csv_is_plain_and_no_cell_is_a_formula(job_log: JobLog, tmp_path: Path) -> None:
    """Python's own reader finds one row an entry; no cell begins as a formula does."""
    path = job_log.saved("csv", tmp_path)
    csv.field_size_limit(LONG_CELL)
    with path.open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file, strict=True))

    assert len(rows) == 2
    assert {row["verdict"] for row in rows} == {
        "Pass so far; still to do: test button (BS 7671)",
        "Fail",
    }
    assert [
        cell for row in rows for cell in row.values() if cell.startswith(tuple("=+-@\t\r"))
    ] == []
    (harmless,) = (row for row in rows if "HYPERLINK" in row["device"])
    assert harmless["device"] == "'" + FORMULA
    assert harmless["note"] == "'-2 °C\n;'=1+1\n''quoted\""
    (plain,) = (row for row in rows if row is not harmless)
    assert plain["device"] == "Way 4, übergang"
    assert json.loads(plain["request"])["readings"][0]["value"] == "400 ms"


def test_the_sum_is_the_published_one(job_log: JobLog, tmp_path: Path) -> None:
    """CRC-32 (ISO 3309; here Python's zlib) over canonical JSON (RFC 8785), as documented."""
    file = json.loads(job_log.saved("json", tmp_path).read_text(encoding="utf-8"))

    assert file["format"] == "residual-current job log"
    assert file["version"] == 1
    for entry in file["entries"]:
        told = entry.pop("sum")
        assert sum_of(entry) == told


def _changed(path: Path, old: str, new: str) -> Path:
    text = path.read_bytes().decode("utf-8")
    assert old in text
    number = len(list(path.parent.iterdir()))  # the page tells files apart by their names
    changed = path.with_name(f"changed-{number}{path.suffix}")
    changed.write_bytes(text.replace(old, new, 1).encode())
    return changed


def _line_of(path: Path, part: str) -> int:
    return path.read_bytes().decode("utf-8").split(part, maxsplit=1)[0].count("\n") + 1


def test_a_damaged_file_is_refused_with_its_line(job_log: JobLog, tmp_path: Path) -> None:
    """Cut short, edited outside or broken: nothing is taken in, and the line is named."""
    plain = job_log.saved("json", tmp_path)
    table = job_log.saved("csv", tmp_path)
    before = job_log.stored()
    cut = tmp_path / "cut.json"
    cut.write_bytes(plain.read_bytes()[:-200])
    odd = tmp_path / "odd.csv"
    odd.write_bytes(table.read_bytes()[:-200])
    latin = tmp_path / "latin.csv"
    latin.write_bytes(table.read_bytes().decode().encode("latin-1", "replace"))
    second = _line_of(plain, "Way 4")
    for path, told in (
        (_changed(plain, "Way 4", "Way 5"), f"Line {second}: this entry is not as it was written"),
        (_changed(table, "Way 4", "Way 5"), f"Line {_line_of(table, 'Way 4')}: this entry"),
        (_changed(plain, '"400 ms"', '"400 ms'), f"Line {second}: this is not JSON"),
        (_changed(plain, '"version":1', '"version":2'), "format 2, and this build reads format 1"),
        (_changed(plain, "residual-current job log", "list"), "Line 1: this is no job log"),
        (_changed(table, '"job"', '"work"'), "Line 1: these are not the column headings"),
        (cut, "the file ends too early"),
        (odd, "ends inside a cell"),
        (latin, "this is not text in UTF-8"),
    ):
        job_log.take_in(path)
        expect(job_log.said).to_contain_text(f"Nothing was taken in from {path.name}.")
        expect(job_log.said).to_contain_text(told)

    assert job_log.stored() == before


def test_a_file_never_makes_a_pass_of_a_failure(job_log: JobLog, tmp_path: Path) -> None:
    """A forged pass is refused although its sum was worked out anew."""
    forged = an_entry(5, request=reading("400 ms"))
    forged["reply"]["outcome"] = "pass"

    job_log.take_in(written(tmp_path, forged, name="forged.json"))

    expect(job_log.said).to_contain_text("does not follow from its findings")


def test_a_row_lost_from_a_csv_is_noticed(job_log: JobLog, tmp_path: Path) -> None:
    """A file with a whole row missing is refused, though every row left is sound."""
    table = job_log.saved("csv", tmp_path)
    lines = table.read_bytes().decode("utf-8")
    head, first, *_ = lines.split('"residual-current job log 1"')
    short = tmp_path / "short.csv"
    short.write_bytes((head + '"residual-current job log 1"' + first).encode())

    job_log.take_in(short)

    expect(job_log.said).to_contain_text("should hold 2 entries, and holds 1")


def test_a_copied_text_is_taken_in_too(job_log: JobLog, page: Page, tmp_path: Path) -> None:
    """Where no file can be chosen, its text can be pasted."""
    text = job_log.saved("json", tmp_path).read_text(encoding="utf-8")
    page.locator("[data-text]").fill(text)
    job_log.button("Take in the text").click()

    expect(job_log.said).to_contain_text("From the text: 0 new, 2 here already")
