"""The command line holds the public contract, with nothing installed but Python."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from checkers.catalogue import CHECKERS
from checkers.command_line.main import main
from checkers.domain.codes.registry import CODES

ROOT = Path(__file__).parents[2]
DEVICE = ["--type", "A", "--rated-residual-current", "30 mA", "--code", "gb"]


def reading(value: str) -> list[str]:
    """Return the flags of a device with one trip time at once its rating."""
    return [*DEVICE, "--reading", f"test=trip-time multiple=1 waveform=ac value='{value}'"]


@pytest.mark.parametrize(
    ("value", "status"),
    [("28 ms", 0), (">300", 1), ("-5", 2), ("290 ms", 3), ("test not completed", 3)],
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


SAVED = json.dumps({"device": {"type": "A"}, "readings": [{"test": "button", "value": "ok"}]})


@pytest.mark.parametrize(
    ("flags", "named"),
    [
        (["--dc-residual", "50"], "dc_residual"),
        (["--code", "gb", "--on", "2020-01-01"], "on"),
        (["--reading", "value=28"], "readings"),
    ],
)
def test_flags_beside_a_file_are_refused_by_name(
    flags: list[str], named: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing that was typed is dropped: the file is the whole request."""
    file = tmp_path / "request.json"
    file.write_text(SAVED, encoding="utf-8")

    assert main(["readings", "--json", str(file)]) != 2
    capsys.readouterr()
    for words in (["--json", str(file), *flags], [*flags, "--json", str(file)]):
        assert main(["readings", *words]) == 2
        assert "--json" in json.loads(capsys.readouterr().out)["errors"][named]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--type", "A", "--type", "AC"], "given twice: 'A' and 'AC'"),
        (["--type", "A", "--type", "A"], "given twice"),
        (["--json", "a", "--json", "b"], "given twice"),
        (["--reading", "value=400 value=28"], "readings[0].value: is given twice: '400' and '28'"),
        (["--reading", "value=28", "--reading", "phase=0 phase=0"], "readings[1].phase"),
        (["--reading", "=28"], "is not made of key=value"),
        (["--reading", "value=28 " + "a" * 5000], "…' is not made of key=value"),
    ],
    ids=range(7),
)
def test_a_flag_or_a_key_given_twice_is_refused_by_name(
    words: list[str], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """The last one never wins in silence, and one short line says so."""
    assert main(["readings", *words]) == 2
    out, err = capsys.readouterr()

    assert says in " ".join((out + err).split())
    assert len((out + err).strip().splitlines()) <= 4
    assert len(out + err) < 400


@pytest.mark.parametrize(
    ("given", "field"),
    [
        (b'{"device": {"type": "A", "type": "AC"}, "readings": []}', "device.type"),
        (b"[" * 200_000, "request"),
        (b'{"readings": ' + b"[" * 500 + b"]" * 500 + b"}", "readings"),
        (b'{"device": {"rated_residual_current": ' + b"9" * 6000 + b"}}", "device."),
        (b'{"device": {"made_to": "\\ud83d"}}', "device.made_to"),
        (b'{"device": {"made_to": "\xff"}}', "request"),
        (b"\xff\xfe[\x00]\x00", "request"),
    ],
    ids=range(7),
)
def test_a_request_that_cannot_be_read_ends_with_two_in_a_process_of_its_own(
    given: bytes, field: str
) -> None:
    """One reply of the contract comes out: no traceback, and never the status of a failure."""
    line = [sys.executable, "-m", "checkers", "readings", "--json", "-"]
    ran = subprocess.run(line, cwd=ROOT, input=given, capture_output=True, check=False)
    reply = json.loads(ran.stdout)

    assert (ran.returncode, ran.stderr, reply["kind"]) == (2, b"", "invalid")
    assert any(name.startswith(field) for name in reply["errors"])


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


@pytest.mark.parametrize(("strict", "status"), [([], 0), (["--strict"], 3)])
def test_strictly_a_pass_with_a_test_still_to_do_is_none(
    strict: list[str], status: int, capsys: pytest.CaptureFixture[str]
) -> None:
    """One trip time is a pass so far: the button was not tried."""
    assert status == main(["readings", *reading("28 ms"), *strict])
    assert capsys.readouterr().out.startswith("PASS SO FAR; still to do: test button (BS 7671)")


def test_strictly_a_whole_pass_is_one(capsys: pytest.CaptureFixture[str]) -> None:
    """With the button too, nothing is left to do."""
    button = ["--reading", "test=button value=operates"]

    assert main(["readings", *reading("28 ms"), *button, "--strict"]) == 0
    assert capsys.readouterr().out.startswith("PASS ")
