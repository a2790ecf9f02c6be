"""How many bytes a visitor fetches before a verdict is possible."""

from __future__ import annotations

import json
from pathlib import Path

from build_tools.figures import Figure
from build_tools.runtime import MANIFEST
from build_tools.site_build import ensure_site

SQUEEZED = {"brotli": ".br", "gzip": ".gz"}


def measure() -> list[Figure]:
    """Add up the runtime's files as a server with each kind of squeezing sends them.

    Returns:
        A figure a kind [MB of a million bytes].
    """
    folder = ensure_site() / "runtime"
    names = [MANIFEST, *json.loads((folder / MANIFEST).read_bytes())["files"]]
    return [
        Figure(f"first-verdict-{kind}", sum(_sent(folder / x, suffix) for x in names) / 1e6)
        for kind, suffix in SQUEEZED.items()
    ]


def _sent(file: Path, suffix: str) -> int:
    squeezed = file.with_name(file.name + suffix)
    return (squeezed if squeezed.exists() else file).stat().st_size
