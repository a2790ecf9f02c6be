"""Start another program, keep what it says in a log, and tell a person where that is."""

from __future__ import annotations

import os
import subprocess
from collections import deque
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from build_tools.files import paths
from build_tools.machine.problems import Problem

Argument = str | Path

TAIL = 400  # lines of a program's output kept for judging why it failed


class ProgramFailedError(Exception):
    """Raised when a program ends with an error; holds its last lines and its log."""

    def __init__(self, name: str, output: str, log: Path) -> None:
        """Keep the program's name, the end of its output and where all of it is."""
        super().__init__(f"{name} failed; see {log}")
        self.output = output
        self.log = log


def run_logged(
    name: str,
    arguments: Sequence[Argument],
    *,
    folder: Path = paths.ROOT,
    variables: Mapping[str, str] | None = None,
    each_line: Callable[[str], None] | None = None,
) -> str:
    """Run a program to its end, with its output in `.build/logs/<name>.txt`.

    Args:
        name: the log's name.
        arguments: the program and its arguments.
        folder: where it runs.
        variables: environment variables to set beside those there are.
        each_line: called with each line as it comes.

    Returns:
        The end of its output.

    Raises:
        ProgramFailedError: it ended with an error.
        Problem: it could not be started.
    """
    paths.LOGS.mkdir(parents=True, exist_ok=True)
    log = paths.LOGS / f"{name}.txt"
    lines: deque[str] = deque(maxlen=TAIL)
    with log.open("w", encoding="utf-8") as kept, _started(arguments, folder, variables) as process:
        for line in process.stdout or ():
            kept.write(line)
            lines.append(line)
            if each_line:
                each_line(line)
    output = "".join(lines)
    if process.returncode != 0:
        raise ProgramFailedError(name, output, log)
    return output


def _started(
    arguments: Sequence[Argument], folder: Path, variables: Mapping[str, str] | None
) -> subprocess.Popen[str]:
    try:
        return subprocess.Popen(
            [str(argument) for argument in arguments],
            cwd=folder,
            env={**os.environ, **(variables or {})},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            encoding="utf-8",
            errors="replace",
        )
    except OSError as error:
        raise Problem(
            f"{arguments[0]} cannot be started ({error.strerror}).",
            "install it, then run this again.",
        ) from error


NO_NETWORK_SIGNS = (
    "NewConnectionError",
    "NameResolutionError",
    "Temporary failure in name resolution",
    "Failed to establish a new connection",
    "Network is unreachable",
    "Connection refused",
    "ConnectTimeoutError",
    "ProxyError",
    "ENOTFOUND",
    "ECONNREFUSED",
    "ECONNRESET",
    "ETIMEDOUT",
    "EAI_AGAIN",
    "error sending request",
    "Could not connect",
)


def no_network(output: str) -> bool:
    """Tell whether a program's words mean that it reached no network."""
    return any(sign in output for sign in NO_NETWORK_SIGNS)
