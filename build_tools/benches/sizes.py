"""How many bytes a visitor fetches before a verdict is possible."""

from __future__ import annotations

import json
from pathlib import Path

from build_tools.benches.budgets import Measurement
from build_tools.runtime.assembly import MANIFEST
from build_tools.site.build import ensure_site

COMPRESSED = {"brotli": ".br", "gzip": ".gz"}


def measure() -> list[Measurement]:
    """Add up the runtime's files as a server with each kind of compression sends them.

    Returns:
        A figure a kind [MB of a million bytes].
    """
    folder = ensure_site() / "runtime"
    names = [MANIFEST, *json.loads((folder / MANIFEST).read_bytes())["files"]]
    return [
        Measurement(f"first-verdict-{kind}", sum(_sent(folder / x, suffix) for x in names) / 1e6)
        for kind, suffix in COMPRESSED.items()
    ]


def _sent(file: Path, suffix: str) -> int:
    compressed = file.with_name(file.name + suffix)
    return (compressed if compressed.exists() else file).stat().st_size
