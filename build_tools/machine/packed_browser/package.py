"""The pinned package with a headless Chromium in it, its libraries and one family of fonts."""

from __future__ import annotations

import io
import platform
import sys
import tarfile
from html import escape
from pathlib import Path

import brotli

from build_tools.files import fingerprints, paths
from build_tools.files.folders import replacing
from build_tools.machine.make_once import make_once
from build_tools.machine.npm_packages import fetch_packages, locked_files
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError, run_logged
from build_tools.machine.progress import step

SOURCE = Path(__file__).parent
PACKAGES = paths.BUILD / "packed-browser" / "packages"
FOLDER = paths.BUILD / "packed-browser" / "unpacked"
MARKER = paths.BUILD / "packed-browser" / "finished"
PACKED = PACKAGES / "node_modules" / "@sparticuz" / "chromium" / "bin"
PROGRAM = FOLDER / "chromium-headless"

OLDEST_GLIBC = (2, 34)  # that of Amazon Linux 2023, which its libraries were made on

# The package says what it brings for a machine that is as bare as a function in a cloud.
STARTER = """#!/bin/sh
export LD_LIBRARY_PATH="${0%/*}/libraries/lib" FONTCONFIG_FILE="${0%/*}/fonts.conf"
exec "${0%/*}/chromium" "$@"
"""
# Its fonts alone, so that a page measures the same on every machine.
FONTS = """<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>{folder}/fonts</dir><cachedir>{folder}/fonts-cache</cachedir></fontconfig>
"""


def fits_machine() -> bool:
    """Tell whether the package's build is for this system, processor and C library."""
    library, _, version = " ".join(platform.libc_ver()).partition(" ")
    return (sys.platform, platform.machine(), library) == ("linux", "x86_64", "glibc") and tuple(
        int(part) for part in version.split(".")
    ) >= OLDEST_GLIBC


def ensure_packed_browser() -> Path:
    """Fetch the package and unpack it into `.build/packed-browser` unless it is there.

    Returns:
        The program, to be started by its whole path.

    Raises:
        Problem: the package cannot be fetched, or its browser does not run here.
    """
    wanted = fingerprints.fingerprint_of_files(paths.ROOT, *locked_files(SOURCE), Path(__file__))
    make_once(PROGRAM, MARKER, wanted, _make)
    return PROGRAM


def _make() -> None:
    fetch_packages(SOURCE, PACKAGES, "a headless Chromium, which this machine lacks (70 MB)")
    with step("Unpacking it"), replacing(FOLDER) as folder:
        unpack(PACKED, folder, FOLDER)
    try:
        run_logged("packed-browser", [PROGRAM, "--version"])
    except ProgramFailedError as error:
        raise Problem(
            f"The fetched Chromium does not run on this machine (log: {error.log}).",
            "install a Chromium or Chrome by other means.",
        ) from error


def unpack(packed: Path, folder: Path, lasting: Path) -> None:
    """Unpack the browser, its libraries and its fonts, and write how it is started.

    Args:
        packed: the package's folder of compressed archives.
        folder: where it all goes.
        lasting: where that folder will lie.
    """
    program, starter = folder / "chromium", folder / PROGRAM.name
    program.write_bytes(brotli.decompress((packed / "chromium.br").read_bytes()))
    for archive, name in (("al2023", "libraries"), ("fonts", ".")):
        content = brotli.decompress((packed / f"{archive}.tar.br").read_bytes())
        with tarfile.open(fileobj=io.BytesIO(content)) as tar:
            tar.extractall(folder / name, filter="data")
    starter.write_text(STARTER, encoding="utf-8")
    for file in (program, starter):
        file.chmod(0o755)
    fonts = FONTS.format(folder=escape(str(lasting)))
    (folder / "fonts.conf").write_text(fonts, encoding="utf-8")
