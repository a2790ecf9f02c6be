"""The command for a whole schedule: a file in, rows out, and an exit status to go by."""

from __future__ import annotations

import contextlib
import csv
import io
import json
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from unittest.mock import patch

import pytest

from checkers.command_line import main as cli

ROOT = Path(__file__).parents[2]
GOOD = "Device,IΔn,x1\nRCD 1,30 mA,28\nRCD 2,30 mA,31\n"
BAD = GOOD + "RCD 3,30 mA,410\n"
OPEN = GOOD + "RCD 3,30 mA,test not completed\n"


@dataclass(frozen=True, slots=True)
class Ran:
    """What a command left: its exit status, and what it printed."""

    returncode: int
    stdout: str
    stderr: str


def command(*words: str | Path, given: bytes = b"") -> Ran:
    """Run the command here, with some standard input."""
    out, err, typed = io.StringIO(), io.StringIO(), io.TextIOWrapper(io.BytesIO(given))
    with (
        patch.object(sys, "stdin", typed),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
    ):
        status = cli.main(["schedule", *map(str, words)])
    return Ran(status, out.getvalue(), err.getvalue())


@pytest.fixture
def board(tmp_path: Path) -> Path:
    """Return a schedule with one device that fails."""
    path = tmp_path / "board.csv"
    path.write_text(BAD, encoding="utf-8")
    return path


@pytest.mark.parametrize(("text", "status"), [(GOOD, 0), (BAD, 1), (OPEN, 3), ("a,b\n", 3)])
def test_the_exit_status_tells_the_worst(text: str, status: int) -> None:
    """Only a schedule of which every device passes gives 0."""
    assert command("-", "--code", "gb", given=text.encode()).returncode == status


def test_a_file_gives_its_rows_and_what_they_come_to(board: Path) -> None:
    """Rows as text, mapping, totals, what comes first and the cautions."""
    ran = command(board, "--code", "gb")
    text = ran.stdout

    assert "line 4  FAIL" in text
    assert "Devices: 1 fail, 2 pass so far, with tests still to do." in text
    assert "3  x1: trip time ×1" in text
    assert "Never leave a device that failed in service" in text
    assert max(map(len, text.splitlines())) <= 80


@pytest.mark.parametrize("ending", ["csv", "tsv", "json", "html"])
def test_the_ending_of_the_output_decides_its_form(board: Path, ending: str) -> None:
    """The file is whole, and nothing else is left beside it."""
    out = board.with_name(f"verdicts.{ending}")
    ran = command(board, "--code", "gb", "--out", out)
    text = out.read_text(encoding="utf-8")

    assert ran.returncode == 1, ran.stderr
    assert "RCD 3" in text
    assert text.lstrip("\ufeff").startswith({"json": "{", "html": "<!doctype"}.get(ending, "line"))
    assert sorted(path.name for path in board.parent.iterdir()) == ["board.csv", out.name]


def test_the_output_has_as_many_rows_as_the_file(board: Path) -> None:
    """Blank rows, titles and rows that cannot be read included."""
    text = "Title,,\n,,\n" + BAD + ',,\nRCD 4,"30 mA,28\nRCD 5,30 mA,28,1,2\n'
    board.write_text(text, encoding="utf-8")
    out = board.with_name("out.csv")
    command(board, "--out", out)

    rows = list(csv.reader(io.StringIO(out.read_text(encoding="utf-8-sig"))))
    assert len(rows) == text.count("\n")


def test_the_command_runs_in_a_process_of_its_own(board: Path) -> None:
    """Standard input, output and exit status are the process's own."""
    line = [sys.executable, "-m", "checkers", "schedule", "-", "--code", "gb"]
    ran = subprocess.run(line, cwd=ROOT, input=board.read_bytes(), capture_output=True, check=False)

    assert ran.returncode == 1
    assert "line 4  FAIL" in ran.stdout.decode()


def test_the_reply_can_be_had_as_json(board: Path) -> None:
    """The reply is that of the contract."""
    ran = command(board, "--json", "--code", "gb", "--on", "2026-11-24")
    reply = json.loads(ran.stdout)

    assert (reply["kind"], reply["outcome"], reply["on"]) == ("result", "fail", "2026-11-24")
    assert reply["answer"]["first"][0]["device"] == "RCD 3"


def test_a_request_with_the_whole_text_works_as_for_every_checker() -> None:
    """`schedule --json -` takes the contract's request."""
    request = json.dumps({"code": "gb", "text": BAD}).encode()
    ran = command("--json", "-", given=request)

    assert json.loads(ran.stdout)["outcome"] == "fail"
    assert ran.returncode == 1


def test_a_mapping_given_by_hand_is_used(board: Path) -> None:
    """A column is named by its number or heading."""
    board.write_text("Device,IΔn,kitchen\nRCD 1,30 mA,28\n", encoding="utf-8")

    assert command(board, "--code", "gb").returncode == 3
    assert command(board, "--code", "gb", "--map", "3=trip-time x1 (ms)").returncode == 0
    assert command(board, "--code", "gb", "--map", "kitchen=trip-time x1 (ms)").returncode == 0


@pytest.mark.parametrize(("said", "status"), [(b"y\n", 1), (b"n\n", 2), (b"", 2)])
def test_nothing_is_judged_before_the_mapping_is_confirmed(
    board: Path, said: bytes, status: int
) -> None:
    """It is shown first; anything but yes stops."""
    ran = command(board, "--confirm-mapping", "--code", "gb", given=said)

    assert "x1: trip time ×1" in ran.stderr
    assert ran.returncode == status
    assert ("FAIL" in ran.stdout) is (status == 1)


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["missing.csv"], "No such file"),
        (["board.csv", "--out", "out.doc"], "ends in none of .csv, .tsv"),
        (["board.csv", "--out", "board.csv"], "is the schedule itself"),
        (["board.csv", "--out", "no/such/folder.csv"], "No such file"),
        (["board.csv", "--map", "x1"], "is not COLUMN=MEANING"),
        (["board.csv", "--map", "x9=device"], "no column is called"),
        (["board.csv", "--map", "4=device"], "by its number, from 1 to 3"),
        (["board.csv", "--map", "0=device"], "no column is called '0'"),
        (["board.csv", "--map", "1=device", "--map", "1=circuit"], "column 1 is given two"),
        (["board.csv", "--map", "3=x5", "--map", "x1=x5"], "as '3' and as 'x1'"),
        (["board.csv", "--code", "gb", "--code", "au"], "given twice: 'gb' and 'au'"),
        (["board.csv", "--out", "a.csv", "--out", "b.csv"], "given twice"),
        (["board.csv", "--encoding", "utf-8", "--encoding", "latin-1"], "given twice"),
        (["board.csv", "--code", "xx"], "code"),
        (["board.csv", "--encoding", "utf-7"], "is not one of utf-8"),
        (["board.csv", "--delimiter", "both"], "is not one character"),
        (["board.csv", "--no-such-flag"], "unrecognized arguments"),
        (["."], "directory"),
    ],
)
def test_a_bad_request_is_named_and_nothing_is_written(
    board: Path, words: list[str], message: str
) -> None:
    """The exit status is 2, the message names the field, and the schedule is untouched."""
    paths = [str(board.parent / word) if "/" in word or "." in word else word for word in words]
    ran = command(*paths)

    assert ran.returncode == 2
    assert message in ran.stderr
    assert [path.name for path in board.parent.iterdir()] == ["board.csv"]
    assert board.read_text(encoding="utf-8") == BAD


def test_a_heading_that_two_columns_share_names_neither(board: Path) -> None:
    """It would be a guess which one is meant."""
    board.write_text("Device,IΔn,note,note\nRCD 1,30 mA,28,31\n", encoding="utf-8")
    ran = command(board, "--map", "note=x1")

    assert ran.returncode == 2
    assert "columns 3 and 4 are called 'note'" in ran.stderr


def test_a_reader_that_goes_ends_the_command_quietly(board: Path) -> None:
    """Nothing is said of a pipe that is closed, and the status is never that of a failure."""
    board.write_text(GOOD + "RCD 3,30 mA,410\n" * 5000, encoding="utf-8")
    line = [sys.executable, "-m", "checkers", "schedule", str(board)]
    with subprocess.Popen(
        line, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as running:
        assert running.stdout is not None
        assert running.stderr is not None
        running.stdout.readline()
        running.stdout.close()
        said = running.stderr.read()

    assert said == b""
    assert running.returncode == 2


def test_help_names_every_input() -> None:
    """Flags for the file and for what holds for every row."""
    text = command("--help").stdout

    for words in (
        "FILE",
        "--out",
        "--map",
        "--confirm-mapping",
        "--code",
        "--rated-residual-current",
    ):
        assert words in text


LEFT_OPEN = "Device,IΔn,x1,button\nRCD 1,30 mA,28,ok\nRCD 2,30 mA,28,\n"


@pytest.mark.parametrize(("words", "status"), [((), 0), (("--strict",), 3)])
def test_strictly_a_test_still_to_do_is_no_pass(words: tuple[str, ...], status: int) -> None:
    """The button of RCD 2 was not tried, which BS 7671 requires."""
    ran = command("-", "--code", "gb", *words, given=LEFT_OPEN.encode())

    assert ran.returncode == status
    assert "line 3  PASS SO FAR  RCD 2" in ran.stdout
    assert "\nPASS SO FAR; still to do: test button (BS 7671) for 1 device" in ran.stdout
    assert "line 2  PASS        RCD 1" in ran.stdout


@pytest.mark.parametrize("form", ["csv", "json", "html"])
def test_no_file_shows_a_bare_pass_for_what_is_left(form: str, tmp_path: Path) -> None:
    """In each form the row says what is still to do."""
    out = tmp_path / f"out.{form}"
    command("-", "--code", "gb", "--out", out, given=LEFT_OPEN.encode())
    text = out.read_text(encoding="utf-8")

    assert "test button (BS 7671)" in text
    if form != "json":
        assert "pass so far; still to do: test button (BS 7671)" in text
