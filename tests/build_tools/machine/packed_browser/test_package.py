"""The browser that npm carries is fetched for machines that it runs on alone, and starts there."""

from __future__ import annotations

import io
import platform
import subprocess
import sys
import tarfile
from pathlib import Path

import brotli
import pytest

from build_tools.machine.packed_browser.package import PROGRAM, fits_machine, unpack

TELLS = '#!/bin/sh\necho "$LD_LIBRARY_PATH|$FONTCONFIG_FILE|$*"\n'
FITTING = ("linux", "x86_64", ("glibc", "2.36"))


@pytest.mark.parametrize(
    ("system", "processor", "library", "fits"),
    [
        (*FITTING, True),
        ("linux", "x86_64", ("glibc", "2.34"), True),
        ("linux", "x86_64", ("glibc", "2.31"), False),
        ("linux", "x86_64", ("", ""), False),
        ("linux", "aarch64", ("glibc", "2.36"), False),
        ("darwin", "x86_64", ("", ""), False),
        ("win32", "AMD64", ("", ""), False),
    ],
)
def test_it_is_for_one_kind_of_machine(
    monkeypatch: pytest.MonkeyPatch,
    system: str,
    processor: str,
    library: tuple[str, str],
    *,
    fits: bool,
) -> None:
    """Linux on x86-64, with the C library that most systems have had since 2022."""
    monkeypatch.setattr(sys, "platform", system)
    monkeypatch.setattr(platform, "machine", lambda: processor)
    monkeypatch.setattr(platform, "libc_ver", lambda: library)

    assert fits_machine() is fits


@pytest.mark.skipif(sys.platform == "win32", reason="it starts by a shell")
def test_it_starts_with_what_came_with_it(tmp_path: Path) -> None:
    """Its own libraries and fonts, wherever it lies, and what it is told."""
    packed, folder = tmp_path / "packed", tmp_path / "un packed"
    packed.mkdir()
    folder.mkdir()
    (packed / "chromium.br").write_bytes(brotli.compress(TELLS.encode()))
    (packed / "al2023.tar.br").write_bytes(archive("lib/libnss3.so"))
    (packed / "fonts.tar.br").write_bytes(archive("fonts/one.ttf"))

    unpack(packed, folder, folder)

    told = subprocess.run(
        [folder / PROGRAM.name, "--version", "a b"], capture_output=True, text=True, check=True
    )
    libraries, fonts, arguments = told.stdout.strip().split("|")
    assert (Path(libraries) / "libnss3.so").is_file()
    assert f"<dir>{folder}/fonts</dir>" in Path(fonts).read_text(encoding="utf-8")
    assert (folder / "fonts" / "one.ttf").is_file()
    assert arguments == "--version a b"


def archive(name: str) -> bytes:
    """Return a compressed archive of one empty file."""
    made = io.BytesIO()
    with tarfile.open(fileobj=made, mode="w") as tar:
        tar.addfile(tarfile.TarInfo(name))
    return bytes(brotli.compress(made.getvalue()))
