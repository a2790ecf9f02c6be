"""Compile the texts of which `dataclasses` makes methods, so that no visitor's browser has to.

The library writes the methods of each data class as text and compiles it: in a browser, a third
of what importing a checker takes. Run as a program this writes the module for the browser, since
texts can be heard of only while the classes are made for the first time.
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

from build_tools.programs import run_logged

MODULE = "_class_texts.py"
IMPORTED = (
    "checkers.contract.bridge",
    "checkers.contract.browser_image",
    "checkers.contract.schedule_stream",
)


def class_texts_module() -> bytes:
    """Return the source of a module with the compiled texts as CODES.

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


def heard_texts() -> list[str]:
    """Import all that the browser may, and return each text that `dataclasses` made meanwhile."""
    heard: dict[str, None] = {}

    def run(text: str, outer: dict[str, Any], names: dict[str, Any]) -> None:
        heard[text] = None
        exec(text, outer, names)  # noqa: S102  # what the library itself does with the text

    dataclasses.exec = run  # type: ignore[attr-defined]
    for name in IMPORTED:
        import_module(name)
    for slug in import_module("checkers.catalogue").SLUGS:
        import_module("checkers.catalogue").checker_for(slug)
    return list(heard)


def module_text(texts: list[str]) -> str:
    """Return the module's source: bytecode by the SHA-256 of its text, which is itself not kept."""
    codes = {
        sha256(text.encode()).digest(): marshal.dumps(
            compile(text, "<string>", "exec", dont_inherit=True)
        )
        for text in texts
    }
    return f"CODES = {codes!r}\n"


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(module_text(heard_texts()), encoding="utf-8")
