"""Slow a browser down as a slower machine would be: all of it stands still, over and over.

The throttling that a browser offers itself reaches a page's main thread alone, not its workers,
where Python runs. Here the system stops every process of the browser and lets it go on, many
times a second: page, workers, compilers and network alike get a quarter of the time. The clock by
which the page measures goes on.
"""

from __future__ import annotations

import os
import signal
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager

RUNS = 0.010  # seconds
SLOWNESS = 4


def can_slow() -> bool:
    """Tell whether this system can stop and continue a group of processes."""
    return os.name == "posix"


@contextmanager
def slowed(group: int) -> Iterator[None]:
    """Let a group of processes run a quarter of the time.

    Args:
        group: the number of the process group.
    """
    over = threading.Event()
    thread = threading.Thread(target=_stop_and_go, args=(group, over), daemon=True)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join()


def _stop_and_go(group: int, over: threading.Event) -> None:
    while not over.is_set():
        time.sleep(RUNS)
        os.killpg(group, signal.SIGSTOP)
        time.sleep(RUNS * (SLOWNESS - 1))
        os.killpg(group, signal.SIGCONT)
