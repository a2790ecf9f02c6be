"""Where everything is: what is built or fetched lies under one git-ignored folder."""

from __future__ import annotations

import os
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
TOOLS = ROOT / "build_tools"
REQUIREMENTS = TOOLS / "machine" / "requirements" / "environment.txt"
RUNTIME_PINS = TOOLS / "runtime" / "pinned.toml"

BUILD = ROOT / ".build"
VENV = BUILD / "venv"
LOGS = BUILD / "logs"
CACHE = BUILD / "cache"
RUNTIME = BUILD / "runtime"
SITE = BUILD / "site"


def inside_venv(venv: Path, program: str) -> Path:
    """Say where a program of a virtual environment lies on this system.

    Args:
        venv: the environment's folder.
        program: the program's name, as "python".

    Returns:
        The program's path, whether it exists or not.
    """
    if os.name == "nt":
        return venv / "Scripts" / f"{program}.exe"
    return venv / "bin" / program
