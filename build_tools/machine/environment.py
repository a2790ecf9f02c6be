"""The build environment: made once from the pinned, hashed requirements, then entered."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

from build_tools.files import build_markers, fingerprints, paths
from build_tools.machine import python_fetcher
from build_tools.machine.problems import Problem
from build_tools.machine.programs import Argument, ProgramFailedError, no_network, run_logged
from build_tools.machine.progress import say, show_count, step
from build_tools.machine.python_finder import WANTED, candidates, find

MARKER = paths.VENV / "finished"
AGAIN = "run the same command again"


def wanted_marker(requirements: Path = paths.REQUIREMENTS) -> str:
    """Say what a finished environment was made from."""
    return fingerprints.fingerprint([WANTED, requirements.read_bytes()])


def is_ready(venv: Path = paths.VENV, marker: Path = MARKER) -> bool:
    """Tell whether the environment is finished, current, and its Python still there."""
    return build_markers.is_marked(marker, wanted_marker()) and _python(venv).exists()


def is_inside(venv: Path = paths.VENV) -> bool:
    """Tell whether this very process runs in the environment."""
    return Path(sys.prefix).resolve() == venv.resolve()


def ensure() -> None:
    """Make the environment unless it is ready.

    Raises:
        Problem: no fitting Python, or the packages could not be fetched.
    """
    if is_ready():
        return
    build_markers.remove_marker(MARKER)
    if paths.VENV.exists():
        say("An earlier set-up is out of date or was not finished: it is made again.")
    python = find(candidates(os.environ, python_fetcher.FETCHED)) or python_fetcher.fetch()
    _make(python)
    _fill()
    build_markers.write_marker(MARKER, wanted_marker())


def enter(arguments: Sequence[str]) -> int:
    """Run the command again inside the environment.

    Args:
        arguments: what the person typed after `python3 -m build_tools`.

    Returns:
        The command's exit status.
    """
    command = [str(_python(paths.VENV)), "-m", "build_tools", *arguments]
    if os.name == "posix":
        os.chdir(paths.ROOT)
        os.execv(command[0], command)  # noqa: S606 - signals then reach the command itself
    return subprocess.run(command, cwd=paths.ROOT, check=False).returncode


def leave(arguments: Sequence[str]) -> int:
    """Run the command again outside the environment, which is about to be made anew."""
    outside = getattr(sys, "_base_executable", sys.executable)
    command = [outside, "-m", "build_tools", *arguments]
    return subprocess.run(command, cwd=paths.ROOT, check=False).returncode


def _python(venv: Path) -> Path:
    return paths.inside_venv(venv, "python")


def _make(python: Path) -> None:
    shutil.rmtree(paths.VENV, ignore_errors=True)
    with step(f"Making the build environment with {python}"):
        try:
            run_logged("environment-venv", [python, "-m", "venv", paths.VENV])
        except ProgramFailedError as error:
            raise Problem(
                f"{python} cannot make an environment (log: {error.log}).",
                f"install that Python's venv and ensurepip modules, then {AGAIN}.",
            ) from error


def _fill() -> None:
    total = len(re.findall(r"^\S+==", paths.REQUIREMENTS.read_text(encoding="utf-8"), re.MULTILINE))
    seen = 0

    def count(line: str) -> None:
        nonlocal seen
        if line.startswith("Collecting "):
            seen = min(seen + 1, total)
            show_count(seen, total, line.split()[1].partition("==")[0])

    # Only the pinned list counts, whatever else pip is set up to look at; nothing is compiled here.
    options = ["--no-deps", "--require-hashes", "--only-binary", ":all:", "--retries", "2"]
    pip: list[Argument] = [
        _python(paths.VENV),
        "-m",
        "pip",
        "install",
        "--progress-bar",
        "off",
        *options,
    ]
    with step(f"Fetching {total} packages into it (half a minute, the first time only)"):
        try:
            run_logged("environment", [*pip, "-r", paths.REQUIREMENTS], each_line=count)
        except ProgramFailedError as error:
            raise _fetch_problem(error) from error


def _fetch_problem(error: ProgramFailedError) -> Problem:
    if no_network(error.output):
        return Problem(
            "The packages cannot be fetched: no network, or a proxy stands in the way.",
            f"connect, then {AGAIN} (log: {error.log}).",
        )
    reason = next((x for x in reversed(error.output.splitlines()) if x.startswith("ERROR:")), "")
    return Problem(
        f"The packages cannot be fetched. {reason}".strip(),
        f"look at {error.log}, then {AGAIN}.",
    )
