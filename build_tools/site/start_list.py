"""What a page has to know to start the checkers: files with their hashes, and a first question."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Mapping
from typing import Any

from build_tools.files import fingerprints
from checkers.catalogue import SLUGS, checker_for

MACHINE_CODE = ".wasm"
IMPORTED = ".js"  # the worker imports these itself
ARCHIVES = (".whl", ".zip")
WORKER = "worker.js"
PROBE_DAY = "2026-01-01"


def runtime_list(
    manifest: dict[str, dict[str, dict[str, str]]], lock: object, scripts: Mapping[str, bytes]
) -> dict[str, object]:
    """Return what a worker fetches of the runtime: the machine code, and the archives beside it.

    Inputs: the runtime's manifest; its list of further packages, as JSON values, which it is
    given as it stands; our own scripts that run in a worker. Result: names, sizes [bytes],
    SHA-256 in base64; and one hash of our own scripts, which a kept image is bound to too.
    """
    listed = [
        {
            "name": name,
            "bytes": file["bytes"],
            "hash": base64.b64encode(bytes.fromhex(file["sha256"])).decode(),
        }
        for name, file in manifest["files"].items()
    ]
    (machine_code,) = (one for one in listed if str(one["name"]).endswith(MACHINE_CODE))
    own = {"name": WORKER, "hash": _hash(fingerprints.fingerprint(_parts(scripts)).encode())}
    return {
        "machine_code": machine_code,
        "archives": [one for one in listed if str(one["name"]).endswith(ARCHIVES)],
        "scripts": [*(one for one in listed if str(one["name"]).endswith(IMPORTED)), own],
        "lock": lock,
    }


def start_scripts(runtime: Mapping[str, Any], worker: bytes) -> list[dict[str, str]]:
    """Return the scripts that a worker runs, with their hashes, for the page to compare.

    Inputs: what `runtime_list` returned; the worker's own script. Result: the folder of each, its
    name and its SHA-256 in base64.
    """
    imported = [one for one in runtime["scripts"] if "bytes" in one]
    return [
        {"folder": "browser", "name": WORKER, "hash": _hash(worker)},
        *({"folder": "runtime", "name": one["name"], "hash": one["hash"]} for one in imported),
    ]


def probe() -> dict[str, str]:
    """Return the question by which a start from an image shows that it answers as it should.

    Its day is fixed, so that its reply is the same on any day.
    """
    checker = checker_for(SLUGS[0])
    request = {"on": PROBE_DAY, **checker.examples[0].request}
    return {"slug": checker.slug, "request": json.dumps(request)}


def _parts(scripts: Mapping[str, bytes]) -> list[str | bytes]:
    return [part for one in sorted(scripts.items()) for part in one]


def _hash(content: bytes) -> str:
    return base64.b64encode(hashlib.sha256(content).digest()).decode()
