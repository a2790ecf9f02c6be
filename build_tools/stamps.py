"""Stamps: a note of what a finished result was made from, so that it is made once.

A result without its stamp is a half-finished one: it is made again from the start.
"""

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


def is_stamped(stamp: Path, value: str) -> bool:
    """Tell whether a result was finished from just these inputs."""
    try:
        return stamp.read_text(encoding="ascii") == value
    except OSError:
        return False


def write_stamp(stamp: Path, value: str) -> None:
    """Note that a result is finished; call it last."""
    stamp.parent.mkdir(parents=True, exist_ok=True)
    unfinished = stamp.with_name(stamp.name + ".part")
    unfinished.write_text(value, encoding="ascii")
    unfinished.replace(stamp)


def remove_stamp(stamp: Path) -> None:
    """Mark a result as unfinished; call it before anything of it is touched."""
    stamp.unlink(missing_ok=True)
