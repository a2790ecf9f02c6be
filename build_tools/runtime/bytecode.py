"""Compile a zip or a wheel for the runtime with pyodide-build, so that no visitor has to."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from build_tools.files.archives import archive_bytes, read_archive
from build_tools.machine.programs import run_logged


def compile_archive(archive: Path, *, docstrings: bool = True) -> tuple[str, dict[str, bytes]]:
    """Compile every module of an archive.

    Args:
        archive: a zip file or a wheel with sources; it is left as it is.
        docstrings: whether they stay; without them assertions go too.

    Returns:
        The compiled archive's name, and its files: bytecode in place of sources, all else the same.

    Raises:
        ProgramFailedError: a source does not compile.
    """
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / archive.name
        # Written anew, so that names and order are ours whatever made the archive.
        copy.write_bytes(archive_bytes(read_archive(archive)))
        compiler = [sys.executable, "-m", "pyodide_cli", "py-compile", "--silent"]
        # With this variable Python stamps bytecode with its source's hash, not with today's time.
        optimise = "" if docstrings else "2"
        # No columns either: they only serve messages about errors, which nobody sees here.
        variables = {
            "SOURCE_DATE_EPOCH": "315532800",
            "PYTHONOPTIMIZE": optimise,
            "PYTHONNODEBUGRANGES": "1",
        }
        run_logged(
            f"compile-{archive.stem}",
            [*compiler, "--compression-level", "0", copy],
            variables=variables,
        )
        copy.with_name(f"{archive.name}.old").unlink(missing_ok=True)
        (made,) = (x for x in Path(folder).iterdir() if x != copy or x.suffix == ".zip")
        return made.name, read_archive(made)
