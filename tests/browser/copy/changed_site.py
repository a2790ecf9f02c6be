"""A built site in which one file was changed on its way, as some proxies and filters do."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

# A module of machine code may end in any number of sections of one's own (WebAssembly, 5.5.3).
SECTION = b"\x00\x05\x04note"
COMMENT = b"\n/* added on the way */\n"


def change_file(site: Path, folder: Path, name: str, content: bytes | None = None) -> Path:
    """Give a copy of a site in which one file is another; its squeezed copies are gone.

    Inputs: the site; the folder of the copy; the file's place in it; what it is to hold, or
    None for what it holds with a harmless addition.
    """
    shutil.copytree(site, folder, copy_function=os.link)
    file = folder / name
    held = file.read_bytes()
    for one in (file, *(file.with_name(file.name + end) for end in (".br", ".gz"))):
        one.unlink(missing_ok=True)
    file.write_bytes(held + _addition(name) if content is None else content)
    return folder


def _addition(name: str) -> bytes:
    return SECTION if name.endswith(".wasm") else COMMENT
