"""Build the site: pages, the runtime, what makes it work offline, then squeezed copies."""

from __future__ import annotations

import importlib.util
import shutil
import sys
from pathlib import Path

from build_tools import places, stamps
from build_tools.compression import compress_site
from build_tools.identity import SOURCES, build_identity
from build_tools.problems import Problem
from build_tools.programs import Argument, ProgramFailedError, run_logged
from build_tools.progress import say, step
from build_tools.runtime import MANIFEST, ensure_runtime

STAMP = places.BUILD / "site.finished"
MAKING = places.BUILD / "site.making"


def ensure_site() -> Path:
    """Build the site into `.build/site` unless it is current.

    Returns:
        The site's folder. It changes only as a whole, once the new one is complete.

    Raises:
        Problem: a page, a table or a check of the site says no.
    """
    runtime = ensure_runtime()
    wanted = stamps.fingerprint_of_files(
        places.ROOT,
        *SOURCES,
        places.REQUIREMENTS,
        runtime / MANIFEST,
        also=[build_identity().build_id],
    )
    if stamps.is_stamped(STAMP, wanted) and places.SITE.exists():
        return places.SITE
    with step("Building the site"):
        _make(runtime)
    stamps.remove_stamp(STAMP)
    shutil.rmtree(places.SITE, ignore_errors=True)
    MAKING.rename(places.SITE)
    stamps.write_stamp(STAMP, wanted)
    return places.SITE


def _make(runtime: Path) -> None:
    shutil.rmtree(MAKING, ignore_errors=True)
    _pages(MAKING)
    shutil.copytree(runtime, MAKING / "runtime")
    _make_offline(MAKING)
    compress_site(MAKING)


def _pages(folder: Path) -> None:
    # Started as a module: MkDocs puts only the hook's own folder on the path, Python the project's.
    command: list[Argument] = [
        sys.executable,
        "-m",
        "mkdocs",
        "build",
        "--strict",
        "--quiet",
        "--site-dir",
        folder,
    ]
    try:
        run_logged("site", command, variables={"NO_MKDOCS_2_WARNING": "1"})
    except ProgramFailedError as error:
        say(error.output.rstrip())
        raise Problem(
            "The site does not build, for the reason above.", "correct it, then run this again."
        ) from error


def _make_offline(folder: Path) -> None:
    if importlib.util.find_spec("build_tools.offline"):
        offline = importlib.import_module("build_tools.offline")
        offline.write_precache(folder, build_identity().build_id)
