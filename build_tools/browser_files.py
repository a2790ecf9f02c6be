"""The page's own scripts and styles, in a folder named for what they and the runtime hold.

A page names that folder, its scripts name the runtime's files with their hashes: so a page only
ever runs scripts, runtime and checkers of its own build.
"""

from __future__ import annotations

import base64
import json
from functools import cache

from build_tools import places, stamps
from build_tools.runtime import MANIFEST, PREPARED
from checkers.domain.glossary import QUANTITIES
from checkers.domain.sources import Evidence
from checkers.printing import ABOUT, HEADLINES

SOURCES = places.TOOLS / "browser"
SERVICE_WORKER = SOURCES / "service-worker.js"  # served from the site's root, by offline.py
ENTRY = "page.js"
MACHINE_CODE = ".wasm"
IMPORTED = (".js", ".mjs")  # the worker imports these itself


@cache
def browser_files() -> dict[str, bytes]:
    """Return every script and style by its name in the folder."""
    written = stamps.files_under(SOURCES)
    files = {path.name: path.read_bytes() for path in written if path != SERVICE_WORKER}
    manifest = json.loads((PREPARED / MANIFEST).read_text(encoding="utf-8"))
    return {
        **files,
        "runtime.js": constants({"RUNTIME": runtime_list(manifest)}),
        "words.js": constants(words()),
    }


@cache
def browser_folder() -> str:
    """Return the folder's place in the site."""
    parts = [part for name, content in browser_files().items() for part in (name, content)]
    return f"browser/{stamps.fingerprint(parts)[:12]}"


def modules() -> list[str]:
    """Return the scripts a page needs, as places in the site; the worker fetches its own."""
    own = {"worker.js", "python.js"}
    names = [name for name in browser_files() if name.endswith(".js") and name not in own]
    return [f"{browser_folder()}/{name}" for name in names]


def styles() -> list[str]:
    """Return the styles as places in the site."""
    return [f"{browser_folder()}/{name}" for name in browser_files() if name.endswith(".css")]


def runtime_list(manifest: dict[str, dict[str, dict[str, str]]]) -> dict[str, object]:
    """Return what a page fetches of the runtime: the machine code, and the archives beside it.

    Inputs: the runtime's manifest. Result: names, sizes [bytes], SHA-256 in base64.
    """
    listed = [
        {
            "name": name,
            "bytes": file["bytes"],
            "hash": base64.b64encode(bytes.fromhex(file["sha256"])).decode(),
        }
        for name, file in manifest["files"].items()
        if not name.endswith(IMPORTED)
    ]
    (machine_code,) = (one for one in listed if str(one["name"]).endswith(MACHINE_CODE))
    return {
        "machine_code": machine_code,
        "archives": [one for one in listed if one is not machine_code],
    }


def words() -> dict[str, dict[str, str]]:
    """Return the words a page shows for what stands in a reply."""
    return {
        "OUTCOMES": {key: word.capitalize() for key, word in HEADLINES.items()},
        "JUDGES": {key: f"{word[0].upper()}{word[1:]}" for key, word in ABOUT.items()},
        "EVIDENCE": {word.value: word.meaning for word in Evidence},
        "NAMES": {key: quantity.name for key, quantity in QUANTITIES.items()},
    }


def constants(values: dict[str, dict[str, object]] | dict[str, dict[str, str]]) -> bytes:
    """Return a script that exports the values under their names."""
    lines = [
        f"export const {name} = {json.dumps(value, ensure_ascii=False)};\n"
        for name, value in values.items()
    ]
    return "".join(lines).encode()
