"""The type of each kind of file: one table for the server and for a reader's copy."""

from __future__ import annotations

from pathlib import PurePosixPath

# Given here, since what a system's own list says of these differs from machine to machine.
TYPES = {
    ".css": "text/css",
    ".html": "text/html",
    ".js": "text/javascript",
    ".json": "application/json",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".toml": "application/toml",
    ".txt": "text/plain",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".whl": "application/zip",
    ".xml": "text/xml",
    ".zip": "application/zip",
}
UNKNOWN = "application/octet-stream"


def media_type(name: str) -> str:
    """Give the Content-Type of a file by its name: texts are in UTF-8."""
    kind = TYPES.get(PurePosixPath(name).suffix.lower(), UNKNOWN)
    return f"{kind}; charset=utf-8" if kind.startswith("text/") else kind
