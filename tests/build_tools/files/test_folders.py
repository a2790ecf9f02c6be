"""A folder is replaced as a whole, or not at all."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from build_tools.files.folders import replacing


def test_the_new_contents_take_the_place_of_the_old(tmp_path: Path) -> None:
    """Nothing of the old stays, and nothing lies beside it."""
    folder = tmp_path / "site"
    for name in ("one", "two"):
        with replacing(folder) as new:
            (new / name).touch()

    assert [x.name for x in folder.iterdir()] == ["two"]
    assert [x.name for x in tmp_path.iterdir()] == ["site"]


def test_a_failure_leaves_the_old_contents(tmp_path: Path) -> None:
    """And nothing half-made."""
    folder = tmp_path / "site"
    folder.mkdir()
    (folder / "one").touch()

    with pytest.raises(FileNotFoundError):
        _copy(folder, "one", "absent")

    assert [x.name for x in folder.iterdir()] == ["one"]
    assert [x.name for x in tmp_path.iterdir()] == ["site"]


def _copy(folder: Path, *names: str) -> None:
    with replacing(folder) as new:
        for name in names:
            shutil.copy(folder / name, new)
