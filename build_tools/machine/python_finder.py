"""Find the Python that the build environment needs.

Bytecode is accepted only by the minor version that made it, so the environment's Python is the
runtime's: compiling the site's library with another one gives files that the browser refuses.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path

from build_tools.files import paths

WANTED: str = tomllib.loads(paths.RUNTIME_PINS.read_text(encoding="utf-8"))["pyodide"]["python"]

# Prints the path of an interpreter only if an environment can be made with it.
PROBE = """
import sys, sysconfig, ensurepip, venv
fits = (
    "%d.%d" % sys.version_info[:2] == "{wanted}"
    and sys.implementation.name == "cpython"
    and not sysconfig.get_config_var("Py_GIL_DISABLED")
)
print(getattr(sys, "_base_executable", None) or sys.executable if fits else "")
"""


def candidates(
    variables: Mapping[str, str], fetched: Path, *, windows: bool = os.name == "nt"
) -> Iterator[list[str]]:
    """List the commands that may start the wanted Python, the likeliest first.

    Args:
        variables: environment variables; PATH and PYENV_ROOT count.
        fetched: the folder of Pythons that an earlier run fetched.
        windows: whether this is Windows, where the launcher `py` knows what is installed.

    Yields:
        Commands to which Python's own arguments can be added.
    """
    yield [sys.executable]
    for name in (f"python{WANTED}", "python3", "python"):
        if path := shutil.which(name, path=variables.get("PATH")):
            yield [path]
    # pyenv's shim on PATH fails unless the version is selected, so look at what is installed.
    pyenv = Path(variables.get("PYENV_ROOT") or Path.home() / ".pyenv") / "versions"
    for folder in (pyenv, fetched):
        yield from _installed_under(folder, windows=windows)
    if windows and (launcher := shutil.which("py", path=variables.get("PATH"))):
        yield [launcher, f"-{WANTED}"]


def _installed_under(folder: Path, *, windows: bool) -> Iterator[list[str]]:
    program = Path("python.exe") if windows else Path("bin") / f"python{WANTED}"
    for version in sorted(folder.glob(f"*{WANTED}*"), reverse=True):
        if (version / program).exists():
            yield [str(version / program)]


def probe(command: list[str]) -> Path | None:
    """Start a command and see whether it is a Python that an environment can be made with.

    Args:
        command: how to start it.

    Returns:
        The interpreter's own path, or None if it does not fit.
    """
    try:
        answer = subprocess.run(
            [*command, "-I", "-c", PROBE.format(wanted=WANTED)],
            capture_output=True,
            text=True,
            timeout=30,
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired):
        return None
    path = answer.stdout.strip()
    return Path(path) if answer.returncode == 0 and path else None


def find(
    commands: Iterable[list[str]], probed: Callable[[list[str]], Path | None] = probe
) -> Path | None:
    """Give the first fitting interpreter of several commands, or None."""
    return next((path for command in commands if (path := probed(command))), None)
