"""What a page has to know to start the checkers: files with their hashes, and a first question."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Mapping

from checkers.catalogue import CHECKERS

MACHINE_CODE = ".wasm"
IMPORTED = (".js", ".mjs")  # the worker imports these itself
WORKERS_OWN = ("archive.js", "memory-pages.js", "python.js", "worker.js")
PROBE_DAY = "2026-01-01"


def runtime_list(
    manifest: dict[str, dict[str, dict[str, str]]], scripts: Mapping[str, bytes]
) -> dict[str, object]:
    """Return what a page fetches of the runtime: the machine code, and the archives beside it.

    Inputs: the runtime's manifest; our own scripts. Result: names, sizes [bytes], SHA-256 in
    base64; and the hashes of the scripts that start it, which a kept image is bound to too.
    """
    listed = [
        {
            "name": name,
            "bytes": file["bytes"],
            "hash": base64.b64encode(bytes.fromhex(file["sha256"])).decode(),
        }
        for name, file in manifest["files"].items()
    ]
    fetched = [one for one in listed if not str(one["name"]).endswith(IMPORTED)]
    (machine_code,) = (one for one in fetched if str(one["name"]).endswith(MACHINE_CODE))
    own = [{"name": name, "hash": _hash(scripts[name])} for name in WORKERS_OWN]
    return {
        "machine_code": machine_code,
        "archives": [one for one in fetched if one is not machine_code],
        "scripts": [*(one for one in listed if one not in fetched), *own],
    }


def probe() -> dict[str, str]:
    """Return the question by which a start from an image shows that it answers as it should.

    Its day is fixed, so that its reply is the same on any day.
    """
    checker = CHECKERS[0]
    request = {"on": PROBE_DAY, **checker.examples[0].request}
    return {"slug": checker.slug, "request": json.dumps(request)}


def _hash(content: bytes) -> str:
    return base64.b64encode(hashlib.sha256(content).digest()).decode()
