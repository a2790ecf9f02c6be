"""Fingerprints: one SHA-256 for several texts or files, to tell whether any of them changed."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from pathlib import Path

SKIPPED_FOLDERS = frozenset({"__pycache__", "node_modules"})


def fingerprint(parts: Iterable[str | bytes]) -> str:
    """Give one SHA-256 for several texts, each kept apart from the next.

    Args:
        parts: texts or bytes, in order.

    Returns:
        64 hexadecimal digits.
    """
    digest = hashlib.sha256()
    for part in parts:
        raw = part.encode() if isinstance(part, str) else part
        digest.update(len(raw).to_bytes(8, "big"))
        digest.update(raw)
    return digest.hexdigest()


def files_under(*paths: Path) -> list[Path]:
    """List the files at or under the paths, sorted, without what programs leave beside them.

    Args:
        paths: files or folders; one that does not exist holds no files.

    Returns:
        Each file once.
    """
    found: set[Path] = set()
    for path in paths:
        inside = path.rglob("*") if path.is_dir() else [path]
        found.update(
            file
            for file in inside
            if file.is_file() and not SKIPPED_FOLDERS.intersection(file.parts)
        )
    return sorted(found)


def fingerprint_of_files(root: Path, *paths: Path, also: Iterable[str] = ()) -> str:
    """Give one SHA-256 for the names and contents of files.

    Args:
        root: the folder that names are relative to, so that two clones agree.
        paths: files or folders under it.
        also: further texts that the result depends on.

    Returns:
        64 hexadecimal digits.
    """
    parts: list[str | bytes] = list(also)
    for file in files_under(*paths):
        parts += [file.relative_to(root).as_posix(), file.read_bytes()]
    return fingerprint(parts)
