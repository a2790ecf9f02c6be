"""Build the site: pages, the runtime, what makes it work offline, then compressed copies."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

from build_tools.files import fingerprints, paths
from build_tools.files.compression import compress_site
from build_tools.files.folders import replacing
from build_tools.files.identity import SOURCES, build_identity
from build_tools.machine.make_once import make_once
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError, run_logged
from build_tools.machine.progress import say, step
from build_tools.runtime.assembly import MANIFEST, ensure_runtime
from build_tools.site.corrections import corrected_days
from build_tools.site.offline import write_precache

MARKER = paths.BUILD / "site.finished"


def ensure_site() -> Path:
    """Build the site into `.build/site` unless it is current.

    Returns:
        The site's folder. It changes only as a whole, once the new one is complete.

    Raises:
        Problem: a page, a table or a check of the site says no.
    """
    runtime = ensure_runtime()
    wanted = fingerprints.fingerprint_of_files(
        paths.ROOT,
        *SOURCES,
        paths.REQUIREMENTS,
        runtime / MANIFEST,
        also=[build_identity().build_id],
    )
    make_once(paths.SITE, MARKER, wanted, lambda: _replace_site(runtime))
    return paths.SITE


def _replace_site(runtime: Path) -> None:
    with replacing(paths.SITE) as folder:
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
