"""A page with the runtime as it comes and the package as a plain wheel: the one to compare with."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

from build_tools.files import fingerprints, paths
from build_tools.files.compression import compress_site
from build_tools.files.folders import replacing
from build_tools.machine.make_once import make_once
from build_tools.runtime.assembly import PACKAGE, PROJECT, SERVED_AS
from build_tools.runtime.npm_package import PYODIDE, ensure_packages, read_pins
from build_tools.runtime.wheel import source_wheel

FOLDER = paths.BUILD / "stock"
MARKER = paths.BUILD / "stock.finished"
PAGE = Path(__file__).parent / "stock"


def ensure_stock_site(slug: str, request: dict[str, object]) -> Path:
    """Put the page together unless it is current.

    Args:
        slug: the checker that it asks.
        request: what it asks, JSON values.

    Returns:
        The folder to serve, with compressed copies as beside our own files.
    """
    ensure_packages()
    question = json.dumps({"slug": slug, "request": json.dumps(request)})
    sources = (PACKAGE, *PROJECT, PAGE, paths.RUNTIME_PINS)
    wanted = fingerprints.fingerprint_of_files(paths.ROOT, *sources, also=[question])
    make_once(FOLDER, MARKER, wanted, lambda: _replace(question))
    return FOLDER


def _replace(question: str) -> None:
    with replacing(FOLDER) as folder:
        _make(folder, question)


def _make(folder: Path, question: str) -> None:
    shutil.copytree(PAGE, folder, dirs_exist_ok=True)
    runtime = folder / "runtime"
    runtime.mkdir()
    for name, served in runtime_files().items():
        shutil.copy(PYODIDE / name, runtime / served)
    wheel = source_wheel(paths.ROOT, folder).name
    constants = f"export const QUESTION = {question};\nexport const WHEEL = {json.dumps(wheel)};\n"
    (folder / "question.js").write_text(constants, encoding="utf-8")
    (folder / "wheel.txt").write_text(wheel, encoding="utf-8")
    compress_site(folder, paths.CACHE / "stock-compressed")


def runtime_files() -> dict[str, str]:
    """Return under which name each file of the runtime lies, by its own."""
    return {name: SERVED_AS.get(name, name) for name in read_pins().files}
