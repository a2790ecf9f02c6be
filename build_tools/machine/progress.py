"""What a person at the terminal sees while something takes long."""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager


def say(text: str) -> None:
    """Print one line at once, even when the output goes to a file."""
    print(text, flush=True)


@contextmanager
def step(name: str) -> Iterator[None]:
    """Announce a step, and tell how long it took once it is done."""
    start = time.monotonic()
    say(f"· {name} …")
    yield
    say(f"  done in {time.monotonic() - start:.1f} s")


def show_now(text: str) -> None:
    """Show on a terminal what is going on; the next line takes its place."""
    if sys.stdout.isatty():
        sys.stdout.write(f"{text}\r")
        sys.stdout.flush()


def show_count(number: int, total: int, name: str) -> None:
    """Show how far a step is: over the last line on a terminal, else every tenth."""
    text = f"  {number} of {total}: {name}"
    if sys.stdout.isatty():
        sys.stdout.write(f"\r\033[K{text}" + ("\n" if number == total else ""))
        sys.stdout.flush()
    elif number % 10 == 0 or number == total:
        say(text)
