"""How pytest is started: on how many processes, and with which tests."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence

EVERYTHING = "--all"
MOST_PROCESSES = 4  # each drives a browser of its own, of some 0.5 GB
OWN_NUMBER = ("-n", "--numprocesses")


def pytest_command(arguments: Sequence[str], processors: int | None = None) -> list[str]:
    """Give the command that runs pytest.

    Args:
        arguments: pytest's own options, and `--all` for the slow tests too.
        processors: how many the machine has; None asks it.

    Returns:
        The program and its arguments; a number of processes that was typed counts.
    """
    own = [x for x in arguments if x != EVERYTHING]
    command = [sys.executable, "-m", "pytest"]
    if not any(x.startswith(OWN_NUMBER) for x in own):
        number = min(processors or os.cpu_count() or 1, MOST_PROCESSES)
        command += ["--numprocesses", str(number), "--dist", "worksteal"]
    marks = ["-m", ""] if EVERYTHING in arguments else []
    return [*command, *marks, *own]
