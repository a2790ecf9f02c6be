"""Build the site: pages, the runtime, what makes it work offline, then squeezed copies."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

from build_tools import places, stamps
from build_tools.compression import compress_site
from build_tools.corrections import corrected_days
from build_tools.folders import replacing
from build_tools.identity import SOURCES, build_identity
from build_tools.made_once import make_once
from build_tools.offline import write_precache
from build_tools.problems import Problem
from build_tools.programs import ProgramFailedError, run_logged
from build_tools.progress import say, step
from build_tools.runtime import MANIFEST, ensure_runtime

STAMP = places.BUILD / "site.finished"


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
    make_once(places.SITE, STAMP, wanted, lambda: _replace_site(runtime))
    return places.SITE


def _replace_site(runtime: Path) -> None:
    with replacing(places.SITE) as folder:
        make_site(folder, runtime)


def make_site(folder: Path, runtime: Path) -> None:
    """Build the whole site into an empty folder, with what `ensure_runtime` prepared."""
    with step("Building the pages"):
        _pages(folder)
    shutil.copytree(runtime, folder / "runtime")
    write_precache(folder, build_identity().build_id, corrected_days())
    with step("Compressing the files (the first time, about half a minute)"):
        compress_site(folder)


def _pages(folder: Path) -> None:
    # Started as a module: MkDocs puts only the hook's own folder on the path, Python the project's.
    mkdocs = [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet", "--site-dir"]
    try:
        run_logged("site", [*mkdocs, folder], variables={"NO_MKDOCS_2_WARNING": "1"})
    except ProgramFailedError as error:
        say(error.output.rstrip())
        raise Problem(
            "The site does not build, for the reason above.", "correct it, then run this again."
        ) from error
