"""Make a lasting result once, however many processes ask for it at one time."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from filelock import FileLock, Timeout

from build_tools.files import build_markers, paths
from build_tools.machine.progress import say


def make_once(result: Path, marker: Path, wanted: str, make: Callable[[], None]) -> None:
    """Make a result and mark it, unless it is there and marked.

    A process that comes while another one makes it waits, and then finds it made. The lock lies
    outside what is made, which may be removed whole.

    Args:
        result: the file or folder; its name in the folder of its marker tells results apart.
        marker: the note of what the result was made from.
        wanted: what it must be made from.
        make: makes it; what it raises is raised, and the result stays unmarked.
    """

    def is_made() -> bool:
        return result.exists() and build_markers.is_marked(marker, wanted)

    if is_made():
        return
    with _alone(f"{marker.parent.name}-{result.name}"):
        if is_made():
            return
        build_markers.remove_marker(marker)
        make()
        build_markers.write_marker(marker, wanted)


@contextmanager
def _alone(name: str) -> Iterator[None]:
    folder = paths.BUILD / "locks"
    folder.mkdir(parents=True, exist_ok=True)
    lock = FileLock(folder / name)
    try:
        lock.acquire(blocking=False)
    except Timeout:
        say("Another process makes what is needed next: waiting for it …")
        lock.acquire()
    try:
        yield
    finally:
        lock.release()
