"""Compressed copies hold the same, are made once, and go when nothing uses them."""

from __future__ import annotations

import gzip
from pathlib import Path

import brotli

from build_tools.files.compression import compress_site

TEXT = b"limits " * 1000


def site(folder: Path, text: bytes = TEXT) -> Path:
    """Write a site of a page, a picture and a small file."""
    folder.mkdir()
    (folder / "page.html").write_bytes(text)
    (folder / "picture.png").write_bytes(text)
    (folder / "small.css").write_bytes(b"a{}")
    return folder


def test_the_copies_hold_the_same_as_the_file(tmp_path: Path) -> None:
    """And are smaller."""
    built = site(tmp_path / "site")
    compress_site(built, tmp_path / "cache")

    compressed = {x: (built / f"page.html{x}").read_bytes() for x in (".br", ".gz")}
    assert brotli.decompress(compressed[".br"]) == TEXT
    assert gzip.decompress(compressed[".gz"]) == TEXT
    assert all(len(x) < len(TEXT) for x in compressed.values())


def test_pictures_and_small_files_have_none(tmp_path: Path) -> None:
    """They would gain nothing."""
    built = site(tmp_path / "site")
    compress_site(built, tmp_path / "cache")

    assert {x.name for x in built.iterdir()} == {
        "page.html", "page.html.br", "page.html.gz", "picture.png", "small.css",
    }  # fmt: skip


def test_an_unchanged_file_is_not_squeezed_again(tmp_path: Path) -> None:
    """The next build takes what the last one kept."""
    cache = tmp_path / "cache"
    compress_site(site(tmp_path / "one"), cache)
    times = {x: x.stat().st_mtime_ns for x in cache.iterdir()}
    compress_site(site(tmp_path / "two"), cache)

    assert {x: x.stat().st_mtime_ns for x in cache.iterdir()} == times


def test_what_no_file_uses_any_more_is_removed(tmp_path: Path) -> None:
    """The cache does not grow from build to build."""
    cache = tmp_path / "cache"
    compress_site(site(tmp_path / "one"), cache)
    before = set(cache.iterdir())
    compress_site(site(tmp_path / "two", TEXT + b"new"), cache)

    assert len(set(cache.iterdir())) == 2
    assert not before & set(cache.iterdir())
