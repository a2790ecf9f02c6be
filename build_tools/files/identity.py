"""Which build a copy of the site is: the day of its sources and a fingerprint of them."""

from __future__ import annotations

import os
import subprocess
from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path
from typing import NamedTuple

from build_tools.files import fingerprints, paths

SOURCES = tuple(paths.ROOT / name for name in ("checkers", "docs", "build_tools", "mkdocs.yml"))


class Identity(NamedTuple):
    """A build's name and the day it tells a reader."""

    build_id: str
    day: date


def build_identity() -> Identity:
    """Name the build that the sources in the work tree give.

    Returns:
        The build's id, which changes with any source and is equal for equal sources, and the day
        of the last commit.
    """
    day = datetime.fromtimestamp(source_epoch(), UTC).date()
    digest = fingerprints.fingerprint_of_files(paths.ROOT, *SOURCES, also=[day.isoformat()])
    return Identity(f"{day.isoformat()}-{digest[:12]}", day)


@cache
def day_of_sources() -> date:
    """Give the day a build tells its reader, found once: pages ask for it again and again."""
    return datetime.fromtimestamp(source_epoch(), UTC).date()


def source_epoch(root: Path = paths.ROOT) -> int:
    """Give the time of the sources, so that one commit gives one build whenever it is made.

    Args:
        root: the project's folder.

    Returns:
        Seconds since 1970: SOURCE_DATE_EPOCH if it is set, else the last commit's time, else, in a
        copy without its history, the time of the newest source.
    """
    if told := os.environ.get("SOURCE_DATE_EPOCH"):
        return int(told)
    try:
        git = ["git", "-C", str(root), "log", "-1", "--format=%ct"]
        answer = subprocess.run(git, capture_output=True, text=True, check=True)
        return int(answer.stdout)
    except (OSError, ValueError, subprocess.CalledProcessError):
        return int(max(file.stat().st_mtime for file in fingerprints.files_under(*SOURCES)))
