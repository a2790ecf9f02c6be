"""Build markers: a note of what a finished result was made from, so that it is made once.

A result without its marker is a half-finished one: it is made again from the start.
"""

from __future__ import annotations

from pathlib import Path


def is_marked(marker: Path, value: str) -> bool:
    """Tell whether a result was finished from just these inputs."""
    try:
        return marker.read_text(encoding="ascii") == value
    except OSError:
        return False


def write_marker(marker: Path, value: str) -> None:
    """Note that a result is finished; call it last."""
    marker.parent.mkdir(parents=True, exist_ok=True)
    unfinished = marker.with_name(marker.name + ".part")
    unfinished.write_text(value, encoding="ascii")
    unfinished.replace(marker)


def remove_marker(marker: Path) -> None:
    """Mark a result as unfinished; call it before anything of it is touched."""
    marker.unlink(missing_ok=True)
