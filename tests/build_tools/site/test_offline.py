"""The list of files to keep holds every file a reader needs, with its hash."""

from __future__ import annotations

import base64
import hashlib
import json
from pathlib import Path

import pytest

from build_tools.files.media_types import TYPES
from build_tools.site.offline import COMPRESSED, precache, size_on_device, types_of, write_precache
from build_tools.site.script_floors import SOURCES

BUILD = "2026-11-24-0123456789ab"


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A small built site."""
    files = {
        "index.html": "front",
        "index.html.br": "compressed",
        "checkers/readings/index.html": "checker",
        "runtime/python.wasm": "code",
        "sitemap.xml": "for other programs",
        "search/search_index.json": "{}",
    }
    for name, text in files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text)
    return tmp_path


def test_what_a_reader_needs_is_listed_with_its_hash(site: Path) -> None:
    """Pages, runtime and search are listed; copies for servers and other tools are not."""
    listed = precache(site)

    assert list(listed) == [
        "checkers/readings/index.html",
        "index.html",
        "runtime/python.wasm",
        "search/search_index.json",
    ]
    digest = hashlib.sha256(b"front").digest()
    assert listed["index.html"] == base64.b64encode(digest).decode()


def test_the_worker_begins_with_its_build(site: Path) -> None:
    """The written worker holds identity, corrections and files, so any change is a new worker."""
    write_precache(site, BUILD, ["2026-12-01"])

    script = (site / "service-worker.js").read_text(encoding="utf-8")
    start, _, rest = script.partition(";\n")
    build = json.loads(start.removeprefix("const BUILD = "))
    assert build["id"] == BUILD
    assert build["built"] == "2026-11-24"
    assert build["corrects"] == ["2026-12-01"]
    assert json.loads((site / "build.json").read_text())["corrects"] == ["2026-12-01"]
    assert precache(site) == build["files"]
    assert build["types"] == {
        ".html": "text/html; charset=utf-8",
        ".json": "application/json",
        ".wasm": "application/wasm",
    }
    assert "service-worker.js" not in build["files"]
    assert "addEventListener" in rest


def test_the_copy_is_counted_as_it_is_kept(site: Path) -> None:
    """Pages count compressed, machine code as it is; the worker compresses the same files."""
    (site / "index.html").write_text("the same words over and over. " * 1000)
    (site / "runtime" / "python.wasm").write_bytes(b"0" * 50_000)

    assert 50_000 < size_on_device(site) < 52_000
    names = "|".join(suffix.removeprefix(".") for suffix in COMPRESSED)
    assert f"/\\.({names})$/" in (SOURCES / "copy" / "entries.js").read_text("utf-8")


def test_a_file_of_a_kind_without_a_type_stops_the_build() -> None:
    """The copy answers by name, so every kind that is kept is in the table."""
    assert set(types_of(f"a{suffix}" for suffix in TYPES)) == set(TYPES)
    with pytest.raises(ValueError, match=r"no type for files in \.mjs"):
        types_of(["page.html", "runtime/x.mjs"])
