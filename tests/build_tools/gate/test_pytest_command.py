"""The tests run side by side, without the slow ones unless they are asked for."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from build_tools.files import paths
from build_tools.gate.pytest_command import MOST_PROCESSES, pytest_command

FILE = """
import pytest

def test_short(): pass

@pytest.mark.slow
def test_long(): pass
"""


@pytest.mark.parametrize(("processors", "wanted"), [(1, 1), (2, 2), (64, MOST_PROCESSES)])
def test_there_is_a_process_for_each_processor_up_to_a_bound(processors: int, wanted: int) -> None:
    """Each holds a browser, and memory is bounded."""
    command = pytest_command([], processors)

    assert command[command.index("--numprocesses") + 1] == str(wanted)


@pytest.mark.parametrize("typed", [["-n", "0"], ["-n3"], ["--numprocesses=1"]])
def test_a_number_of_processes_that_was_typed_counts(typed: list[str]) -> None:
    """One of ours before it would be a second word on the same thing."""
    assert pytest_command(typed, 2)[3:] == typed


@pytest.mark.parametrize(("typed", "passed"), [([], "1 passed"), (["--all"], "2 passed")])
def test_slow_tests_run_when_all_are_asked_for(
    tmp_path: Path, typed: list[str], passed: str
) -> None:
    """The project's own settings leave them out otherwise."""
    file = tmp_path / "test_two.py"
    file.write_text(FILE, encoding="utf-8")
    settings = ["-c", str(paths.ROOT / "pyproject.toml"), "-n", "0"]
    command = pytest_command([*typed, *settings, str(file)])

    ran = subprocess.run(command, cwd=paths.ROOT, capture_output=True, text=True, check=False)

    assert command[0] == sys.executable
    assert passed in ran.stdout
