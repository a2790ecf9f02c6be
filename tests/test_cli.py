"""The command line holds the public contract, with nothing installed but Python."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from checkers.catalogue import CHECKERS
from checkers.cli import main
from checkers.domain.codes import CODES

ROOT = Path(__file__).parent.parent
DEVICE = ["--type", "A", "--rated-residual-current", "30 mA", "--code", "gb"]


def reading(value: str) -> list[str]:
    """Return the flags of a device with one trip time at once its rating."""
    return [*DEVICE, "--reading", f"test=trip-time multiple=1 waveform=ac value='{value}'"]


@pytest.mark.parametrize(
    ("value", "status"), [("28 ms", 0), (">300", 1), ("-5", 2), ("290 ms", 3), ("trp", 3)]
)
def test_the_exit_status_tells_the_outcome(
    value: str, status: int, capsys: pytest.CaptureFixture[str]
) -> None:
    """Pass, fail, bad request, and borderline or cannot say have each their number."""
    assert status == main(["readings", *reading(value)])
    assert capsys.readouterr().out


def test_text_output_keeps_to_eighty_columns(capsys: pytest.CaptureFixture[str]) -> None:
    """Every line of every example's reply, and of the help, fits a terminal."""
    for checker in CHECKERS:
        main([checker.slug, "--help"])
    main(["readings", *reading(">300")])
    for code in CODES:
        main(["limits", code])

    assert [line for line in capsys.readouterr().out.splitlines() if len(line) > 80] == []


def test_without_arguments_each_checker_has_one_line(capsys: pytest.CaptureFixture[str]) -> None:
    """The overview names every slug with its question."""
    assert main([]) == 0

    lines = capsys.readouterr().out.splitlines()
    assert all(any(line.startswith(one.slug) for line in lines) for one in CHECKERS)


def test_a_json_request_on_standard_input_gets_json() -> None:
    """A request piped in is answered as JSON, from a bare Python."""
    request = json.dumps(CHECKERS[0].examples[0].request)
    done = subprocess.run(
        [
            sys.executable,
            "-I",
            "-c",
            (
                "import runpy,sys; sys.path.insert(0, sys.argv.pop(1)); "
                "runpy.run_module('checkers', run_name='__main__')"
            ),
            str(ROOT),
            "readings",
            "--json",
            "-",
        ],
        input=request,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )

    assert json.loads(done.stdout)["kind"] == "result", done.stderr
    assert done.returncode == 0


@pytest.mark.parametrize("text", ["", "not json", "[1, 2"])
def test_a_file_that_is_not_json_is_a_bad_request(
    text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The reply is still JSON, and says so."""
    file = tmp_path / "request.json"
    file.write_text(text, encoding="utf-8")

    assert main(["readings", "--json", str(file)]) == 2
    assert json.loads(capsys.readouterr().out)["kind"] == "invalid"


def test_a_missing_file_is_a_bad_request(capsys: pytest.CaptureFixture[str]) -> None:
    """A name that leads nowhere is answered in one line."""
    assert main(["readings", "--json", "nowhere.json"]) == 2
    assert "nowhere.json" in json.loads(capsys.readouterr().out)["errors"]["request"]


@pytest.mark.parametrize("code", CODES)
def test_limits_of_a_code_come_as_json(code: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Every code prints its tables, and what is not known of it."""
    assert main(["limits", code, "--json"]) == 0

    printed = json.loads(capsys.readouterr().out)
    assert printed["tables"]
    assert printed["not_known"]


@pytest.mark.parametrize("words", [["limits"], ["limits", "xx"], ["nothing"], ["readings"]])
def test_words_that_make_no_sense_are_a_bad_request(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing but a pass ends with zero."""
    assert main(words) == 2
    assert capsys.readouterr()
