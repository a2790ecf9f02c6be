"""Fetch the runtime's npm package, exactly the pinned one, and prove each file that is used."""

from __future__ import annotations

import hashlib
import tomllib
from pathlib import Path
from typing import NamedTuple

from build_tools.files import fingerprints, paths
from build_tools.machine.make_once import make_once
from build_tools.machine.npm_packages import fetch_packages, locked_files
from build_tools.machine.problems import Problem

SOURCE = paths.TOOLS / "runtime"
FOLDER = paths.RUNTIME / "packages"
MARKER = FOLDER / "finished"
PYODIDE = FOLDER / "node_modules" / "pyodide"


class Pins(NamedTuple):
    """Which runtime, which Python it holds, and the SHA-256 of each file used."""

    version: str
    python: str
    files: dict[str, str]


def read_pins(path: Path = paths.RUNTIME_PINS) -> Pins:
    """Read the one place that fixes the runtime."""
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    return Pins(table["pyodide"]["version"], table["pyodide"]["python"], dict(table["files"]))


def ensure_packages() -> None:
    """Fetch what the lock names into `.build/runtime/packages` unless it is there.

    Raises:
        Problem: the packages cannot be fetched, or a file is not the pinned one.
    """
    locked = locked_files(SOURCE)
    wanted = fingerprints.fingerprint_of_files(paths.ROOT, *locked, paths.RUNTIME_PINS)
    make_once(PYODIDE, MARKER, wanted, _fetch)


def _fetch() -> None:
    fetch_packages(SOURCE, FOLDER, "the Python runtime for the browser")
    verify(PYODIDE, read_pins().files)


def verify(folder: Path, files: dict[str, str]) -> None:
    """Compare files with their pinned SHA-256.

    Args:
        folder: where they are.
        files: the SHA-256 in hexadecimal by name.

    Raises:
        Problem: one is missing or differs.
    """
    for name, pinned in files.items():
        file = folder / name
        if not file.exists() or hashlib.sha256(file.read_bytes()).hexdigest() != pinned:
            raise Problem(
                f"{name} of the runtime is not the file that {paths.RUNTIME_PINS.name} names.",
                "correct the pins if the version was changed on purpose; else trust nothing of it.",
            )
