"""Fetch the wanted Python with uv where the machine has none."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

from build_tools.files import paths
from build_tools.machine.problems import Problem
from build_tools.machine.programs import Argument, ProgramFailedError, run_logged
from build_tools.machine.progress import step
from build_tools.machine.python_finder import WANTED, candidates, find

FETCHED = paths.BUILD / "python"
REQUIREMENTS = paths.REQUIREMENTS.with_name("uv.txt")


def fetch() -> Path:
    """Fetch the wanted Python into `.build/python`.

    Returns:
        The interpreter's path.

    Raises:
        Problem: uv or the Python could not be fetched, or does not run here.
    """
    remedy = f"install Python {WANTED} by other means (package manager, installer or pyenv)."
    try:
        with step(f"Fetching Python {WANTED}, which this machine lacks"):
            install: list[Argument] = [
                "python",
                "install",
                WANTED,
                "--install-dir",
                FETCHED,
                "--no-bin",
            ]
            run_logged("python-fetch", [_uv(), *install])
    except ProgramFailedError as error:
        raise Problem(
            f"No Python {WANTED} on this machine, and it could not be fetched (log: {error.log}).",
            remedy,
        ) from error
    found = find(candidates({"PATH": "", "PYENV_ROOT": str(FETCHED)}, FETCHED))
    if found is None:
        raise Problem(f"The fetched Python {WANTED} does not run on this machine.", remedy)
    return found


def _uv() -> str | Path:
    if found := shutil.which("uv"):
        return found
    folder = paths.BUILD / "uv"
    program = paths.inside_venv(folder, "uv")
    if not program.exists():
        run_logged("uv-venv", [sys.executable, "-m", "venv", "--clear", folder])
        python = paths.inside_venv(folder, "python")
        pip: list[Argument] = [python, "-m", "pip", "install", "--retries", "2", "--require-hashes"]
        run_logged("uv-install", [*pip, "-r", REQUIREMENTS])
    return program
