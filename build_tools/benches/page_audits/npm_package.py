"""The pinned Lighthouse: fetched by its bench alone, since nothing else needs it."""

from __future__ import annotations

from pathlib import Path

from build_tools.files import fingerprints, paths
from build_tools.machine.make_once import make_once
from build_tools.machine.npm_packages import fetch_packages, locked_files

SOURCE = Path(__file__).parent
FOLDER = paths.BUILD / "lighthouse" / "packages"
MARKER = FOLDER / "finished"
PROGRAM = FOLDER / "node_modules" / "lighthouse" / "cli" / "index.js"


def ensure_lighthouse() -> Path:
    """Fetch what the lock names into `.build/lighthouse/packages` unless it is there.

    Returns:
        The program, to be run by node.

    Raises:
        Problem: the packages cannot be fetched.
    """
    wanted = fingerprints.fingerprint_of_files(paths.ROOT, *locked_files(SOURCE))
    make_once(PROGRAM, MARKER, wanted, lambda: fetch_packages(SOURCE, FOLDER, "Lighthouse"))
    return PROGRAM
