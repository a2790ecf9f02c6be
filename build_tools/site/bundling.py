"""Our scripts put together by Rollup, so that a page asks for a few files instead of many."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from pathlib import Path

from build_tools.files import paths
from build_tools.machine.node import find_node
from build_tools.machine.programs import run_logged
from build_tools.runtime.npm_package import FOLDER, ensure_packages

BUNDLER = FOLDER / "node_modules" / "@rollup" / "wasm-node" / "dist" / "bin" / "rollup"
SETTINGS = paths.TOOLS / "browser" / "rollup.config.mjs"
OPTIONS = (
    f"--config={SETTINGS}",
    "--format=es",
    "--failAfterWarnings",
    "--silent",
)


def bundle(sources: Mapping[str, bytes], entry: str) -> dict[str, bytes]:
    """Put a script together with all that it imports; what it imports late stays apart.

    Args:
        sources: scripts by their place among the sources.
        entry: the place of the one that is started; its bundle keeps its name.

    Returns:
        Scripts by name, all for one folder; equal sources give equal bytes.

    Raises:
        ProgramFailedError: a script has a fault, or imports what is not there.
    """
    ensure_packages()
    with tempfile.TemporaryDirectory() as made:
        given, put = Path(made, "given"), Path(made, "put")
        given.mkdir()
        for name, content in sources.items():
            (given / name).parent.mkdir(parents=True, exist_ok=True)
            (given / name).write_bytes(content)
        asked = [f"--input={entry}", f"--dir={put}", *OPTIONS]
        run_logged(f"bundle-{Path(entry).name}", [*find_node().node, BUNDLER, *asked], folder=given)
        return {path.name: path.read_bytes() for path in sorted(put.glob("*.js"))}
