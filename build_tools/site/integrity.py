"""The scripts that a page starts are bound to its build: a browser refuses one that was changed.

Each script of a page carries the hash of its file. What is imported later stands with its hash in
an import map, which newer browsers heed and older ones pass over.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
from pathlib import Path, PurePosixPath

FILE = re.compile(r'<script(?P<before>[^>]*?)\ssrc="(?P<src>[^"]+)"(?P<after>[^>]*)>')
HELD = re.compile(r'\sintegrity="[^"]*"')
MAP = re.compile(r'<script type="importmap">.*?</script>', re.DOTALL)
MODULE = '<script type="module"'
LATE = "browser/*/*-*.js"  # named for what they hold, by bundling.py


def bind(site: Path) -> None:
    """Write into every page of a built site the hashes of its scripts.

    Raises ValueError where a page names a script that is not in the site.
    """
    for path in sorted(site.rglob("*.html")):
        page = path.read_text(encoding="utf-8")
        path.write_text(bound(page, site), encoding="utf-8", newline="\n")


def bound(page: str, site: Path) -> str:
    """Return a page with the hashes of its scripts, in place of those it may have had."""

    def with_hash(found: re.Match[str]) -> str:
        before, after = (HELD.sub("", found[part]) for part in ("before", "after"))
        src = found["src"]
        integrity = hash_of(site / _place(src, site))
        return f'<script{before} src="{src}" integrity="{integrity}"{after}>'

    return FILE.sub(with_hash, _with_map(MAP.sub("", page), site))


def hash_of(file: Path) -> str:
    """Return a file's SHA-256 as the attribute `integrity` has it."""
    return f"sha256-{base64.b64encode(hashlib.sha256(file.read_bytes()).digest()).decode()}"


def _with_map(page: str, site: Path) -> str:
    module = re.search(rf'{MODULE}[^>]*\ssrc="([^"]+)"', page)
    if not module:
        return page
    way = module[1].removesuffix(_place(module[1], site)) or "./"  # a map takes no bare names
    late = {way + x.relative_to(site).as_posix(): hash_of(x) for x in sorted(site.glob(LATE))}
    text = json.dumps({"integrity": late}, separators=(",", ":"))
    return page.replace(MODULE, f'<script type="importmap">{text}</script>{MODULE}', 1)


def _place(src: str, site: Path) -> str:
    parts = [part for part in PurePosixPath(src).parts if part not in {"..", "/"}]
    place = PurePosixPath(*parts).as_posix()
    if not (site / place).is_file():
        raise ValueError(f"a page names the script {src}, which is not in the site")
    return place
