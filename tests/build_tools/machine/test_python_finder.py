"""The Python whose bytecode the runtime accepts is found wherever it is installed."""

from __future__ import annotations

import sys
from pathlib import Path

from build_tools.machine import python_finder
from build_tools.machine.python_finder import WANTED, candidates, find, probe

NOWHERE = {"PATH": "", "PYENV_ROOT": "/nonexistent"}


def program(path: Path, script: str) -> Path:
    """Write an executable shell script."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(f"#!/bin/sh\n{script}\n")
    path.chmod(0o755)
    return path


def test_the_running_python_is_asked_first(tmp_path: Path) -> None:
    """No search is needed where the command was started with the right one."""
    assert [sys.executable] == next(candidates(NOWHERE, tmp_path))


def test_a_python_in_the_versions_folder_is_found_though_the_shim_on_path_fails(
    tmp_path: Path,
) -> None:
    """The shim refuses a version that is not selected, and the folder still holds it."""
    shim = program(tmp_path / "shims" / f"python{WANTED}", "echo not selected >&2; exit 127")
    real = tmp_path / "pyenv" / "versions" / f"{WANTED}.0" / "bin" / f"python{WANTED}"
    program(real, f'exec "{sys.executable}" "$@"')
    variables = {"PATH": str(shim.parent), "PYENV_ROOT": str(tmp_path / "pyenv")}

    asked = list(candidates(variables, tmp_path / "fetched", windows=False))

    assert [[str(shim)], [str(real)]] == asked[1:]
    assert probe([str(shim)]) is None
    assert probe([str(real)]) == Path(sys._base_executable)  # type: ignore[attr-defined]


def test_a_python_that_an_earlier_run_fetched_is_found(tmp_path: Path) -> None:
    """Fetching happens once."""
    kept = program(tmp_path / f"cpython-{WANTED}.9-any" / "bin" / f"python{WANTED}", "")

    assert [str(kept)] in list(candidates(NOWHERE, tmp_path, windows=False))


def test_the_launcher_is_asked_on_windows(tmp_path: Path) -> None:
    """There the launcher knows what is installed, and PATH may name nothing."""
    launcher = program(tmp_path / "py", "")
    variables = {"PATH": str(tmp_path), "PYENV_ROOT": "/nonexistent"}

    assert [str(launcher), f"-{WANTED}"] in list(candidates(variables, tmp_path, windows=True))
    assert [str(launcher), f"-{WANTED}"] not in list(candidates(variables, tmp_path, windows=False))


def test_another_version_does_not_fit(tmp_path: Path) -> None:
    """Its bytecode would be refused by the runtime."""
    wrong = python_finder.PROBE.replace("{wanted}", "3.1")
    answers_nothing = program(tmp_path / "python", f"exec '{sys.executable}' -c '{wrong}'")

    assert probe([str(answers_nothing)]) is None


def test_a_program_that_is_not_there_or_never_answers_right_does_not_fit(tmp_path: Path) -> None:
    """Nothing that fails is taken, and nothing is raised."""
    assert probe([str(tmp_path / "absent")]) is None
    assert probe([str(program(tmp_path / "broken", "exit 1"))]) is None


def test_the_first_that_fits_is_taken() -> None:
    """Later candidates are not even started."""
    asked: list[list[str]] = []

    def probed(command: list[str]) -> Path | None:
        asked.append(command)
        return Path("/it") if command == ["b"] else None

    assert Path("/it") == find([["a"], ["b"], ["c"]], probed)
    assert asked == [["a"], ["b"]]
