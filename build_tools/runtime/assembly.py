"""The files that let Python run in a page, put together once for each change of their sources."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path

from build_tools.files import archives, fingerprints, paths
from build_tools.files.folders import replacing
from build_tools.machine.make_once import make_once
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError
from build_tools.machine.progress import step
from build_tools.runtime.npm_package import PYODIDE, Pins, ensure_packages, read_pins
from build_tools.runtime.standard_library import library_for_browser
from build_tools.runtime.wheel import compiled_wheel

PREPARED = paths.RUNTIME / "prepared"
MARKER = paths.RUNTIME / "prepared.finished"
LIBRARY = "python_stdlib.zip"
LOCK = "pyodide-lock.json"
MANIFEST = "manifest.json"
# Under a name of a kind that every host sends as a script; some lists of types lack the other.
SERVED_AS = {"pyodide.mjs": "pyodide.js"}

MAKERS = (Path(__file__).parent, Path(archives.__file__))  # what decides what is made
PACKAGE = paths.ROOT / "checkers"
PROJECT = (paths.ROOT / "pyproject.toml", paths.ROOT / "README.md", paths.ROOT / "LICENSE")


def ensure_runtime() -> Path:
    """Put together the folder that the site serves as `runtime/`, unless it is current.

    Returns:
        The folder. Its `manifest.json` names the runtime's version, the wheel, and each file's
        size in bytes and SHA-256, for the page to load by and to show how far it is.

    Raises:
        Problem: the runtime cannot be fetched, or the package does not build.
    """
    ensure_packages()
    wanted = fingerprints.fingerprint_of_files(
        paths.ROOT, PACKAGE, *PROJECT, *MAKERS, paths.REQUIREMENTS
    )
    make_once(PREPARED, MARKER, wanted, _prepare)
    return PREPARED


def _prepare() -> None:
    with step("Preparing Python and the checkers for the browser"):
        _write(_files(read_pins()))


def _files(pins: Pins) -> dict[str, bytes]:
    try:
        wheel_name, wheel = compiled_wheel()
        library = library_for_browser(PYODIDE / LIBRARY, PACKAGE)
    except (ProgramFailedError, ValueError) as error:
        raise Problem(
            f"The package cannot be made ready for the browser: {error}.",
            "correct what this message or the log names, then run this again.",
        ) from error
    taken = {SERVED_AS.get(x, x): (PYODIDE / x).read_bytes() for x in pins.files}
    files = {
        **taken,
        LIBRARY: library,
        LOCK: without_packages(taken[LOCK]),
        wheel_name: wheel,
    }
    return {**files, MANIFEST: manifest(pins, wheel_name, files)}


def without_packages(lock: bytes) -> bytes:
    """Empty the runtime's list of further packages: it asks for the list, and we use none."""
    return json.dumps({**json.loads(lock), "packages": {}}).encode()


def manifest(pins: Pins, wheel_name: str, files: Mapping[str, bytes]) -> bytes:
    """List what the runtime is made of.

    Args:
        pins: the runtime's version and its Python's.
        wheel_name: the file name of the checkers wheel.
        files: contents by name.

    Returns:
        JSON: `pyodide`, `python`, `wheel`, and `files` with `bytes` and `sha256` by name.
    """
    listed = {
        name: {"bytes": len(content), "sha256": hashlib.sha256(content).hexdigest()}
        for name, content in sorted(files.items())
    }
    table = {
        "pyodide": pins.version,
        "python": pins.python,
        "wheel": wheel_name,
        "files": listed,
    }
    return json.dumps(table, indent=1).encode()


def _write(files: Mapping[str, bytes]) -> None:
    with replacing(PREPARED) as folder:
        for name, content in files.items():
            (folder / name).write_bytes(content)
