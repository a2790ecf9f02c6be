"""From a built site to a site that works without a network: every file, with its hash."""

from __future__ import annotations

import base64
import gzip
import hashlib
import json
from collections.abc import Iterable, Sequence
from pathlib import Path

from build_tools.files.media_types import TYPES, media_type
from build_tools.site.browser_files import SERVICE_WORKER, service_worker
from build_tools.site.policy import sent_headers

IDENTITY = "build.json"  # tells a page, by whatever way it came, which build it is of
# Nothing asks for these: compressed copies for servers, and lists for machines that read sites.
LEFT_OUT = (".br", ".gz", "sitemap.xml", ".py", ".toml")
# What the service worker compresses before it keeps it.
COMPRESSED = (".html", ".json", ".svg", ".whl", ".zip")


def write_precache(site: Path, build_id: str, corrects: Sequence[str]) -> None:
    """Write a built site's identity, and its service worker last of all.

    Inputs: the site's folder, complete; the build's identity, which begins with its day; the days
    of the corrections of verdicts that it holds.
    """
    identity = {"id": build_id, "built": build_id[:10], "corrects": list(corrects)}
    (site / IDENTITY).write_text(json.dumps(identity), encoding="utf-8", newline="\n")
    files = precache(site)
    build = {**identity, "files": files, "types": types_of(files), "headers": sent_headers()}
    text = f"const BUILD = {json.dumps(build, indent=1)};\n\n{service_worker().decode()}"
    (site / SERVICE_WORKER).write_text(text, encoding="utf-8", newline="\n")


def precache(site: Path) -> dict[str, str]:
    """Return every file the site may need, with its SHA-256 in base64."""
    names = {path.relative_to(site).as_posix(): path for path in site.rglob("*") if path.is_file()}
    return {
        name: base64.b64encode(hashlib.sha256(path.read_bytes()).digest()).decode()
        for name, path in sorted(names.items())
        if is_kept(name)
    }


def types_of(names: Iterable[str]) -> dict[str, str]:
    """Return the type of each kind of file, by the end of its name.

    Raises ValueError where one has none: the copy could not be served.
    """
    suffixes = sorted({Path(name).suffix for name in names})
    if unknown := [suffix for suffix in suffixes if suffix not in TYPES]:
        raise ValueError(f"media_types.py has no type for files in {', '.join(unknown)}")
    return {suffix: media_type(suffix.replace(".", "x.")) for suffix in suffixes}


def size_on_device(site: Path) -> int:
    """Return the bytes of the whole copy as it lies on a reader's device, some files compressed."""
    files = [site / name for name in precache(site)]
    return sum(_kept_size(path) for path in files)


def _kept_size(path: Path) -> int:
    if path.suffix in COMPRESSED:
        return len(gzip.compress(path.read_bytes(), compresslevel=6, mtime=0))
    return path.stat().st_size


def is_kept(name: str) -> bool:
    """Tell whether a file belongs into the copy on a reader's device."""
    return name != SERVICE_WORKER and not name.endswith(LEFT_OUT)
