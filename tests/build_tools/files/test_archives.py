"""Equal contents give equal archives."""

from __future__ import annotations

import zipfile
from pathlib import Path

from build_tools.files.archives import archive_bytes, read_archive


def test_the_order_of_files_does_not_count() -> None:
    """Only their names and contents do."""
    assert archive_bytes({"a": b"1", "b": b"2"}) == archive_bytes({"b": b"2", "a": b"1"})


def test_what_goes_in_comes_out(tmp_path: Path) -> None:
    """In any reader of zip files."""
    files = {"a/b.txt": b"text", "c": b""}
    (tmp_path / "x.zip").write_bytes(archive_bytes(files))

    assert read_archive(tmp_path / "x.zip") == files
    with zipfile.ZipFile(tmp_path / "x.zip") as archive:
        assert archive.testzip() is None


def test_folders_are_no_files(tmp_path: Path) -> None:
    """Some archives list them."""
    with zipfile.ZipFile(tmp_path / "x.zip", "w") as archive:
        archive.mkdir("a")
        archive.writestr("a/b", b"1")

    assert read_archive(tmp_path / "x.zip") == {"a/b": b"1"}
