"""The `checkers` wheel as the browser gets it: compiled, and equal for equal sources."""

from __future__ import annotations

import base64
import hashlib
import sys
import tempfile
from collections.abc import Mapping
from pathlib import Path

from build_tools.files import paths
from build_tools.files.archives import archive_bytes, read_archive
from build_tools.machine.programs import run_logged
from build_tools.runtime.bytecode import compile_archive
from build_tools.runtime.data_module import with_parsed_data


def compiled_wheel(project: Path = paths.ROOT) -> tuple[str, bytes]:
    """Build the project's wheel, read its data files and compile it for the runtime.

    Args:
        project: the folder of pyproject.toml.

    Returns:
        The wheel's file name and its bytes.

    Raises:
        ProgramFailedError: the wheel step or the compiler failed.
    """
    with tempfile.TemporaryDirectory() as folder:
        wheel = source_wheel(project, Path(folder))
        wheel.write_bytes(archive_bytes(with_parsed_data(read_archive(wheel))))
        name, files = compile_archive(wheel)
    return name, archive_bytes(with_record(files))


def source_wheel(project: Path, folder: Path) -> Path:
    """Build the project's wheel as it comes, with sources; gives its path in the folder."""
    # The backend is in the environment already, so that this needs no network.
    build: list[str | Path] = [
        sys.executable,
        "-m",
        "build",
        "--wheel",
        "--no-isolation",
        "--outdir",
        folder,
    ]
    run_logged("wheel", [*build, project])
    (wheel,) = folder.glob("*.whl")
    return wheel


def with_record(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """List a wheel's files with their hashes anew, since compiling changed them.

    Args:
        files: a wheel's files by name, with the RECORD of before.

    Returns:
        The same files with a RECORD that agrees.
    """
    (record,) = (name for name in files if name.endswith(".dist-info/RECORD"))
    rest = {name: content for name, content in files.items() if name != record}
    lines = [f"{name},sha256={_digest(rest[name])},{len(rest[name])}" for name in sorted(rest)]
    return {**rest, record: ("\n".join([*lines, f"{record},,"]) + "\n").encode()}


def _digest(content: bytes) -> str:
    return base64.urlsafe_b64encode(hashlib.sha256(content).digest()).decode().rstrip("=")
