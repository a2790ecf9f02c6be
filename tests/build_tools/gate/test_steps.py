"""The gate asks everything that must hold, and one failed step shuts it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from build_tools.command_line import COMMANDS
from build_tools.commands import check
from build_tools.files import paths
from build_tools.gate import steps
from build_tools.gate.steps import STEPS, Step
from build_tools.machine import chromium
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError


def test_the_steps_are_whole_and_the_site_stands_before_the_tests() -> None:
    """The browser tests look at the site just built."""
    assert [x.name for x in STEPS] == ["format", "lint", "types", "floors", "site", "tests"]


def test_every_setting_that_the_gate_relies_on_is_strict() -> None:
    """Loosening one is a decision that shows here."""
    project = (paths.ROOT / "pyproject.toml").read_text()

    assert 'select = ["ALL"]' in project
    assert re.search(r"^strict = true$", project, re.MULTILINE)
    assert 'filterwarnings = ["error"]' in project
    assert re.search(r"^exhaustive = true$", project, re.MULTILINE)


def test_every_switched_off_lint_rule_has_its_reason() -> None:
    """On its own line."""
    lines = (paths.ROOT / "pyproject.toml").read_text().splitlines()
    rules = [x for x in lines if re.match(r'( *|".*" = \[)"[A-Z]+[0-9]+"', x)]

    assert len(rules) > 20
    assert [x for x in rules if not re.search(r"# \w+", x)] == []


def test_a_failed_step_shuts_the_gate_and_the_later_ones_are_still_taken(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """One run shows all there is to do."""
    taken: list[str] = []

    def run_step(step: Step) -> str:
        taken.append(step.name)
        if step.name == "lint":
            raise ProgramFailedError("lint", "F401 unused", Path("log"))
        if step.name == "site":
            raise Problem("A page is missing.", "write it.")
        return ""

    monkeypatch.setattr(check, "run_step", run_step)
    monkeypatch.setattr(check, "tests_passed_before", lambda: False)

    assert check.run([]) == 1
    said = capsys.readouterr().out
    assert taken == [x.name for x in STEPS]
    assert "F401 unused" in said
    assert "A page is missing." in said
    assert said.endswith("The gate is shut: lint, site.\n")


def test_the_gate_is_open_when_every_step_passes(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A line a step."""
    monkeypatch.setattr(check, "run_step", lambda _: "")

    assert check.run(["--again"]) == 0
    assert capsys.readouterr().out.count("ok  ") == len(STEPS)


def test_tests_that_passed_on_these_very_files_are_not_run_again(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Every other step is quick."""
    taken: list[str] = []
    monkeypatch.setattr(check, "run_step", lambda step: taken.append(step.name))
    monkeypatch.setattr(check, "tests_passed_before", lambda: True)

    check.run([])

    assert taken == [x.name for x in STEPS if x.name != "tests"]


def test_failing_tests_leave_no_stamp(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """They are run again although nothing changed."""

    def fails(*_: object, **__: object) -> str:
        raise ProgramFailedError("tests", "1 failed", tmp_path)

    marker = tmp_path / "tests.passed"
    marker.write_text(steps._tested())
    monkeypatch.setattr(steps, "TESTS_MARKER", marker)
    monkeypatch.setattr(steps, "run_logged", fails)
    monkeypatch.setattr(chromium, "find_chromium", lambda: Path("/any"))
    assert steps.tests_passed_before()

    with pytest.raises(ProgramFailedError):
        steps.run_step(STEPS[-1])

    assert not steps.tests_passed_before()


def test_the_readme_names_the_commands_there_are_and_ci_calls_its_test_command() -> None:
    """What a reader types is what runs unattended."""
    readme = (paths.ROOT / "README.md").read_text()
    named = set(re.findall(r"^python3 -m build_tools (\w+)$", readme, re.MULTILINE))

    assert named == {"serve", "test"}
    assert named <= set(COMMANDS)
    assert (paths.ROOT / ".ci" / "run").read_text().endswith("exec python3 -m build_tools test\n")
