"""The recipes for whoever changes something are true: each is followed in a copy of the package.

The same with a step left out ends in one line that names the file, as the recipe says.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

DAMAGED = 4  # the status of the command line where data is not whole
SOURCE = """
[invented-rules]
designation = "Invented rules"
title = "Rules of an invented country"
publisher = "Nobody"
kind = "product-standard"
edition = "2026"
year = 2026
evidence = "memory"
"""
CODE = """
name = "Invented country"
country = "Invented country"
local_note = "Nobody works there."
not_known = ["Everything."]

[[edition]]
document = "invented-rules"
edition = "2026"
evidence = "memory"
from = 2026-01-01
"""
TABLE = """
title = "Operating current of an invented device"
document = "invented-rules"
edition = "2026"
clause = "1"
measures = "operating-current"
applies = { waveform = ["ac"] }
assumed = true

[[row]]
when = { rated_residual_current = { above = "6 mA", up_to = "7 mA" } }
at_least = "4 mA"
at_most = "7 mA"
evidence = "memory"
"""
CHECKER = '''
"""Is it an even number?"""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.checker import Checker, Example
from checkers.domain.inputs.fields import whole_number
from checkers.domain.question import Question
from checkers.domain.verdicts import Outcome, Result


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A number."""

    number: int = whole_number("Number", least=1, most=9, default=1)


def check(inputs: Inputs) -> Result:
    """Say nothing of any number."""
    del inputs
    return Result(findings=())


SAYS_NOTHING = Outcome.CANNOT_SAY
CHECKER = Checker(
    slug="even-number",
    title="Even number",
    question="Is it an even number?",
    inputs=Inputs,
    check=check,
    examples=(
        Example(title="One", request={"number": 1}, outcome=SAYS_NOTHING),
        Example(title="Two", request={"number": 2}, outcome=SAYS_NOTHING),
    ),
)
'''


class Copy:
    """A copy of the package that a recipe is followed in."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.package = folder / "checkers"
        shutil.copytree(
            Path(__file__).parents[1] / "checkers",
            self.package,
            ignore=shutil.ignore_patterns("__pycache__"),
        )

    def add(self, place: str, text: str) -> None:
        """Write a new file, or more into one that is there."""
        path = self.package / place
        path.parent.mkdir(exist_ok=True)
        with path.open("a", encoding="utf-8") as opened:
            opened.write(text)

    def change(self, place: str, before: str, after: str) -> None:
        """Put something in the place of a text that is there once."""
        path = self.package / place
        text = path.read_text(encoding="utf-8")
        assert text.count(before) == 1
        path.write_text(text.replace(before, after), encoding="utf-8")

    def asked(self, *words: str) -> subprocess.CompletedProcess[str]:
        """Ask the copy's command line."""
        line = [sys.executable, "-m", "checkers", *words]
        return subprocess.run(line, cwd=self.folder, capture_output=True, text=True, check=False)


@pytest.fixture
def copy(tmp_path: Path) -> Copy:
    """A copy with nothing changed yet."""
    return Copy(tmp_path)


def test_a_code_is_added_with_its_source(copy: Copy) -> None:
    """Two files, and the command line knows it."""
    copy.add("data/sources.toml", SOURCE)
    copy.add("data/codes/invented.toml", CODE)

    ran = copy.asked("limits", "invented")
    assert ran.returncode == 0, ran.stderr
    assert "Invented country" in ran.stdout


def test_a_code_without_its_source_is_told_in_one_line(copy: Copy) -> None:
    """Status 4, the file, and no traceback."""
    copy.add("data/codes/invented.toml", CODE)

    ran = copy.asked("limits", "invented")
    assert ran.returncode == DAMAGED
    assert "invented.toml" in ran.stderr
    assert "Traceback" not in ran.stderr


def test_a_limit_row_is_judged_by(copy: Copy) -> None:
    """A rating that no table had is judged by the new row."""
    copy.add("data/sources.toml", SOURCE)
    copy.add("data/limits/invented-rules/operating-current.toml", TABLE)

    device = ("--type", "A", "--rated-residual-current", "7 mA", "--made-to", "invented-rules")
    ran = copy.asked("readings", *device, "--reading", "test=ramp waveform=ac value='6 mA'")
    assert "6 mA meets the device standard: 4 mA to 7 mA" in ran.stdout, ran.stdout + ran.stderr


def test_a_limit_row_without_evidence_is_told_in_one_line(copy: Copy) -> None:
    """So is one of an unknown document, an unknown key, a gap or an overlap."""
    copy.add("data/sources.toml", SOURCE)
    copy.add(
        "data/limits/invented-rules/operating-current.toml",
        TABLE.replace('evidence = "memory"', ""),
    )

    ran = copy.asked("limits", "gb")
    assert ran.returncode == DAMAGED
    assert "evidence" in ran.stderr
    assert "Traceback" not in ran.stderr


def test_a_checker_is_added_by_its_slug(copy: Copy) -> None:
    """Its flags and its help follow from its inputs."""
    copy.add("catalogue/even_number.py", CHECKER)
    assert copy.asked("even-number", "--number", "2").returncode not in {0, 3}

    copy.change(
        "catalogue/__init__.py", '    "practice",\n', '    "practice",\n    "even-number",\n'
    )
    ran = copy.asked("even-number", "--help")
    assert ran.returncode == 0, ran.stderr
    assert "--number" in ran.stdout
    assert copy.asked("even-number", "--number", "2").returncode == 3
