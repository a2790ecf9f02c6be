"""Our scripts put together by Rollup, so that a page asks for a few files instead of many."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from pathlib import Path

from build_tools.machine.node import find_node
from build_tools.machine.programs import run_logged
from build_tools.runtime.npm_package import FOLDER, ensure_packages

BUNDLER = FOLDER / "node_modules" / "@rollup" / "wasm-node" / "dist" / "bin" / "rollup"
# What is fetched late carries the hash of what it holds in its name.
OPTIONS = (
    "--format=es",
    "--entryFileNames=[name].js",
    "--chunkFileNames=[name]-[hash].js",
    "--failAfterWarnings",
    "--silent",
)


def bundle(sources: Mapping[str, bytes], entry: str) -> dict[str, bytes]:
    """Put a script together with all that it imports; what it imports late stays apart.

    Args:
        sources: scripts by name.
        entry: the name of the one that is started, which its bundle keeps.

    Returns:
        Scripts by name; equal sources give equal bytes.

    Raises:
        ProgramFailedError: a script has a fault, or imports what is not there.
    """
    ensure_packages()
    with tempfile.TemporaryDirectory() as made:
        given, put = Path(made, "given"), Path(made, "put")
        given.mkdir()
        for name, content in sources.items():
            (given / name).write_bytes(content)
        asked = [f"--input={entry}", f"--dir={put}", *OPTIONS]
        run_logged(f"bundle-{entry}", [*find_node().node, BUNDLER, *asked], folder=given)
        return {path.name: path.read_bytes() for path in sorted(put.glob("*.js"))}
