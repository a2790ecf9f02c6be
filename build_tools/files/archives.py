"""Zip archives whose bytes depend on their contents alone, so that a build can be repeated."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from pathlib import Path

OLDEST_DATE = (1980, 1, 1, 0, 0, 0)  # the zip format's own beginning


def read_archive(path: Path) -> dict[str, bytes]:
    """Read a zip file's files by name; folders are left out."""
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist() if not name.endswith("/")}


def archive_bytes(files: Mapping[str, bytes]) -> bytes:
    """Put files into a zip archive, by name, uncompressed.

    A server or the precompressed copy compresses a whole archive better than zip does
    each file, and the browser then has nothing to inflate at each start.

    Args:
        files: contents by name.

    Returns:
        The archive; equal files give equal bytes.
    """
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_STORED) as archive:
        for name in sorted(files):
            entry = zipfile.ZipInfo(name, OLDEST_DATE)
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, files[name])
    return made.getvalue()
