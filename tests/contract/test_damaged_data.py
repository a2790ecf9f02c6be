"""Damaged data of our own is told of with file and row, and judges nothing."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

import checkers
from checkers.catalogue import checker_for
from checkers.command_line import main as cli
from checkers.contract import bridge
from checkers.domain.errors import DataError

PACKAGE = Path(checkers.__file__).parent
RELOAD = """
import copy, functools, importlib, json, pathlib, random, sys, tomllib
from checkers.domain.errors import DataError
# Each import reads every file anew: what was parsed or compiled before is taken as it was then.
sys.dont_write_bytecode = False
read = functools.cache(tomllib.loads)
tomllib.loads = lambda text: copy.deepcopy(read(text))
data, found = pathlib.Path(sys.argv[1]), {}
for path in sorted(data.rglob("*.toml")):
    whole = path.read_bytes()
    at = random.Random(path.name).randrange(len(whole))
    damages = {
        "bytes": whole[:at] + b"\\xff" + whole[at:],
        "empty": b"",
        "foreign": b"wrong = 5\\n",
        "unknown": whole + b"\\n[wrong]\\nwrong = 5\\n",
    }
    alike = path.parent.parent.name == "limits" or path.parent.name in {"codes", "words"}
    if alike and path.name not in {"break-times.toml", "gb.toml", "reading.toml"}:
        damages = {"bytes": damages["bytes"]}  # one loader reads them all
    for damage, text in damages.items():
        path.write_bytes(text)
        for name in [one for one in sys.modules if one.startswith("checkers")]:
            if name != "checkers.domain.errors":
                del sys.modules[name]
        try:
            importlib.import_module("checkers.command_line.main")
            for slug in sys.modules["checkers.catalogue"].SLUGS:
                sys.modules["checkers.catalogue"].checker_for(slug)
            words = sys.modules["checkers.wording.book"]
            for room in words.rooms():  # each is read for its first finding
                words.room(room)
            ended = "nothing"
        except DataError as bad:
            ended = "told" if ".toml" in bad.file else f"without a file: {bad}"
        except BaseException as bad:
            ended = repr(bad)
        if ended != "told":
            found[f"{path.relative_to(data)} {damage}"] = ended
    path.write_bytes(whole)
print(json.dumps(found))
"""


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """Return a folder with a copy of the package, to damage."""
    shutil.copytree(PACKAGE, tmp_path / "checkers", ignore=shutil.ignore_patterns("__pycache__"))
    return tmp_path


@pytest.mark.parametrize(
    ("file", "damage", "says"),
    [
        ("quantities.toml", b"\xff", "quantities.toml: is not UTF-8"),
        ("codes/gb.toml", b"\n[", "gb.toml: is not valid TOML"),
        ("sources.toml", b'\n[[source]]\nkey = "x"\n', "sources.toml, "),
        ("causes.toml", b"\nwrong = 5\n[", "causes.toml"),
    ],
)
@pytest.mark.parametrize("words", [["explain", "--json", "-"], ["limits", "gb"], []])
def test_the_command_line_ends_with_four(
    file: str, damage: bytes, says: str, words: list[str], copy: Path
) -> None:
    """One line names the file; there is no traceback, and no status that means a verdict."""
    with (copy / "checkers" / "data" / file).open("ab") as opened:
        opened.write(damage)
    line = [sys.executable, "-m", "checkers", *words]
    request = json.dumps(checker_for("explain").examples[0].request).encode()
    ran = subprocess.run(line, cwd=copy, input=request, capture_output=True, check=False)

    said = (ran.stdout + ran.stderr).decode()
    assert ran.returncode == 4, said
    assert says in said
    assert "Traceback" not in said


def test_words_that_are_damaged_judge_nothing(copy: Path) -> None:
    """They are read for the first finding: no verdict comes without its sentence."""
    with (copy / "checkers" / "data" / "words" / "reading.toml").open("ab") as opened:
        opened.write(b"\n[wrong]\nwrong = 5\n")
    line = [sys.executable, "-m", "checkers", "readings", "--json", "-"]
    request = json.dumps(checker_for("readings").examples[0].request).encode()
    ran = subprocess.run(line, cwd=copy, input=request, capture_output=True, check=False)

    assert ran.returncode == 4, ran.stdout
    assert json.loads(ran.stdout)["kind"] == "damaged"
    assert "words/reading.toml" in json.loads(ran.stdout)["file"]


def test_every_damaged_file_is_told_of(copy: Path) -> None:
    """Bytes that are no UTF-8, emptied files, foreign and unknown keys alike."""
    line = [sys.executable, "-c", RELOAD, str(copy / "checkers" / "data")]
    ran = subprocess.run(line, cwd=copy, capture_output=True, text=True, check=False)

    assert json.loads(ran.stdout or "{}") == {}, ran.stderr
    assert ran.returncode == 0, ran.stderr


def test_the_bridge_answers_that_its_data_is_damaged(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The reply names file and row, and is no crash."""

    def broken(slug: str) -> None:
        raise DataError("loads.toml", "lift", f"wrong for {slug}")

    monkeypatch.setattr("checkers.contract.bridge.checker_for", broken)
    reply = bridge.run("readings", {})

    assert (reply["kind"], reply["file"], reply["row"]) == ("damaged", "loads.toml", "lift")
    assert "loads.toml, lift: wrong for readings" in reply["text"]
    assert cli.main(["readings", "--reading", "value=28"]) == 4
    assert "loads.toml" in capsys.readouterr().out
