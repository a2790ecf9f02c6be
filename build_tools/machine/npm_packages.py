"""Fetch what a committed lock names from npm: each file by its sha512, and nothing is run."""

from __future__ import annotations

import shutil
from pathlib import Path

from build_tools.machine.node import find_node
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError, no_network, run_logged
from build_tools.machine.progress import step

NAMES = ("package.json", "package-lock.json")


def locked_files(source: Path) -> tuple[Path, Path]:
    """Give the two files that fix what is fetched: what is asked for, and what is locked."""
    asked, locked = (source / name for name in NAMES)
    return asked, locked


def fetch_packages(source: Path, folder: Path, what: str) -> None:
    """Fetch what a lock names into a folder's `node_modules`, in place of what was there.

    Args:
        source: the folder with package.json and its lock.
        folder: where it goes; its name is the log's.
        what: what a person is told is fetched, as "the Python runtime for the browser".

    Raises:
        Problem: the packages cannot be fetched.
    """
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    for file in locked_files(source):
        shutil.copy(file, folder)
    with step(f"Fetching {what}"):
        _install(folder, f"{source.name}-packages", what)


def _install(folder: Path, log: str, what: str) -> None:
    options = ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--fetch-retries=1"]
    try:
        run_logged(log, [*find_node().npm, *options], folder=folder)
    except ProgramFailedError as error:
        if no_network(error.output):
            raise Problem(
                f"{what[0].upper()}{what[1:]} cannot be fetched: no network, or a proxy stands "
                "in the way.",
                f"connect, then run the same command again (log: {error.log}).",
            ) from error
        raise Problem(
            f"npm could not fetch {what}.", f"look at {error.log}, then run this again."
        ) from error
