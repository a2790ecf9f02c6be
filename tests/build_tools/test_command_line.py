"""One command with a list of what it can do; it starts on the standard library alone."""

from __future__ import annotations

import importlib
import runpy
import subprocess
import sys

import pytest

from build_tools.command_line import COMMANDS, main
from build_tools.files import paths
from build_tools.machine import environment
from build_tools.machine.problems import Problem


class Typed(list[list[str]]):
    """Stands in for starting the command again, and notes what was typed."""

    def __call__(self, arguments: list[str]) -> int:
        """Note the arguments; all went well."""
        self.append(arguments)
        return 0


def test_help_lists_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    """With nothing asked, too."""
    assert main([]) == 0
    asked_nothing = capsys.readouterr().out
    assert main(["help"]) == 0

    assert asked_nothing == capsys.readouterr().out
    assert all(f"  {name} " in asked_nothing for name in COMMANDS)


def test_every_command_is_a_module_of_its_name() -> None:
    """And no module is a command that the list does not show."""
    files = {x.stem for x in (paths.TOOLS / "commands").glob("*.py")} - {"__init__"}

    assert files == set(COMMANDS) - {"help"}
    for name in files:
        assert callable(importlib.import_module(f"build_tools.commands.{name}").run)


def test_an_unknown_command_gets_one_line_and_status_two(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """The line names the way out."""
    assert main(["serv"]) == 2
    assert capsys.readouterr().out.count("\n") == 1


def test_a_problem_is_one_line_and_status_one(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """No traceback for what a person can put right."""

    def fails() -> None:
        raise Problem("It rains.", "take an umbrella.")

    monkeypatch.setattr(environment, "is_inside", lambda: False)
    monkeypatch.setattr(environment, "ensure", fails)

    assert main(["build"]) == 1
    assert capsys.readouterr().out == "build_tools: It rains. Remedy: take an umbrella.\n"


def test_a_command_typed_outside_the_environment_runs_again_inside(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """With all that was typed."""
    entered = Typed()
    monkeypatch.setattr(environment, "is_inside", lambda: False)
    monkeypatch.setattr(environment, "ensure", lambda: None)
    monkeypatch.setattr(environment, "enter", entered)

    assert main(["serve", "--port", "8001"]) == 0
    assert entered == [["serve", "--port", "8001"]]


def test_an_outdated_environment_is_left_before_it_is_made_again(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A running environment is not removed from under itself."""
    left = Typed()
    monkeypatch.setattr(environment, "is_inside", lambda: True)
    monkeypatch.setattr(environment, "is_ready", lambda: False)
    monkeypatch.setattr(environment, "leave", left)

    assert main(["build"]) == 0
    assert left == [["build"]]


def test_an_old_python_is_told_in_one_line(monkeypatch: pytest.MonkeyPatch) -> None:
    """Cause and remedy, before anything that it could not read."""
    monkeypatch.setattr(sys, "version_info", (3, 9, 18))
    monkeypatch.setattr(sys, "version", "3.9.18 (main)")

    with pytest.raises(SystemExit) as stopped:
        runpy.run_module("build_tools", run_name="__main__")

    message = str(stopped.value)
    assert "3.9.18" in message
    assert "3.11" in message
    assert "Remedy: " in message
    assert "\n" not in message


def test_the_first_stage_imports_the_standard_library_only() -> None:
    """Nothing is installed yet when it runs."""
    look = (
        "import sys; before = set(sys.modules); "
        f"sys.path.insert(0, {str(paths.ROOT)!r}); import build_tools.command_line; "
        "names = {x.partition('.')[0] for x in set(sys.modules) - before}; "
        "print(*(names - sys.stdlib_module_names))"
    )
    answer = subprocess.run(
        [sys.executable, "-I", "-S", "-c", look], capture_output=True, text=True, check=True
    )

    assert answer.stdout.split() == ["build_tools"]
