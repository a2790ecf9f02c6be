"""Compress the site's files once, so that a server need not: `x.br` and `x.gz` beside `x`."""

from __future__ import annotations

import gzip
import hashlib
import os
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import brotli

from build_tools.files import paths

CACHE = paths.CACHE / "compressed"
SMALLEST = 1024  # bytes; a smaller file fits into one packet either way
TEXTS = (".css", ".html", ".js", ".json", ".map", ".svg", ".toml", ".txt", ".xml")
SUFFIXES = frozenset((*TEXTS, ".wasm", ".webmanifest", ".whl", ".zip"))

METHODS: dict[str, Callable[[bytes], bytes]] = {
    ".br": lambda content: brotli.compress(content, quality=11, lgwin=24),
    ".gz": lambda content: gzip.compress(content, 9, mtime=0),
}


def compress_site(site: Path, cache: Path = CACHE) -> None:
    """Write the compressed copies of all files that gain from it.

    Args:
        site: the built site.
        cache: where compressed contents are kept from build to build; what this build does not use
            is removed.
    """
    cache.mkdir(parents=True, exist_ok=True)
    files = [x for x in sorted(site.rglob("*")) if x.suffix in SUFFIXES and x.is_file()]
    large = [x for x in files if x.stat().st_size >= SMALLEST]
    with ThreadPoolExecutor() as pool:
        used = set(pool.map(lambda job: _compress(job[0], job[1], cache), _jobs(large)))
    for kept in cache.iterdir():
        if kept not in used:
            kept.unlink(missing_ok=True)


def _jobs(files: list[Path]) -> list[tuple[Path, str]]:
    biggest_first = sorted(files, key=lambda file: -file.stat().st_size)
    return [(file, suffix) for file in biggest_first for suffix in METHODS]


def _compress(file: Path, suffix: str, cache: Path) -> Path:
    content = file.read_bytes()
    kept = cache / (hashlib.sha256(content).hexdigest() + suffix)
    try:
        compressed = kept.read_bytes()
    except FileNotFoundError:
        compressed = METHODS[suffix](content)
        unfinished = kept.with_name(f"{kept.name}.{os.getpid()}.{file.name}.part")
        unfinished.write_bytes(compressed)
        unfinished.replace(kept)
    file.with_name(file.name + suffix).write_bytes(compressed)
    return kept
