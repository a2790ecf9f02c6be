"""Compile the source that `dataclasses` generates, so that no visitor's browser has to.

The library generates the source of each data class's methods and compiles it: in a browser, a
third of what importing a checker takes. Run as a program this writes the module for the browser,
since source is generated only while the classes are made for the first time.
"""

from __future__ import annotations

import dataclasses
import marshal
import sys
import tempfile
from hashlib import sha256
from importlib import import_module
from pathlib import Path
from typing import Any

from build_tools.machine.programs import run_logged

MODULE = "_class_texts.py"
IMPORTED = (
    "checkers.contract.bridge",
    "checkers.contract.browser_image",
    "checkers.contract.schedule_stream",
)


def generated_source_module() -> bytes:
    """Return the source of a module with the compiled source as CODES.

    Raises:
        ProgramFailedError: the package cannot be imported.
    """
    with tempfile.TemporaryDirectory() as folder:
        made = Path(folder) / MODULE
        program: list[str | Path] = [sys.executable, "-X", "no_debug_ranges"]
        # The order in which a set is written down would change from run to run.
        fixed = {"PYTHONHASHSEED": "0"}
        run_logged("class-texts", [*program, "-m", __name__, made], variables=fixed)
        return made.read_bytes()


def generated_sources() -> list[str]:
    """Import all that the browser may, and return each source that `dataclasses` made meanwhile."""
    found: dict[str, None] = {}

    def run(source: str, outer: dict[str, Any], names: dict[str, Any]) -> None:
        found[source] = None
        exec(source, outer, names)  # noqa: S102  # what the library itself does with it

    dataclasses.exec = run  # type: ignore[attr-defined]
    for name in IMPORTED:
        import_module(name)
    for slug in import_module("checkers.catalogue").SLUGS:
        import_module("checkers.catalogue").checker_for(slug)
    return list(found)


def module_text(sources: list[str]) -> str:
    """Return the module's source: bytecode by the SHA-256 of the source it comes from."""
    codes = {
        sha256(source.encode()).digest(): marshal.dumps(
            compile(source, "<string>", "exec", dont_inherit=True)
        )
        for source in sources
    }
    return f"CODES = {codes!r}\n"


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(module_text(generated_sources()), encoding="utf-8")
