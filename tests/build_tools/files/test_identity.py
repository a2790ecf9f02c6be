"""A build is named after its sources, whenever and wherever it is made."""

from __future__ import annotations

import shutil
import subprocess
from datetime import date
from pathlib import Path

import pytest

from build_tools.files import identity, paths
from build_tools.files.identity import build_identity, source_epoch


def test_a_told_time_counts(monkeypatch: pytest.MonkeyPatch) -> None:
    """The variable is the one that build tools agree on (reproducible-builds specification)."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")

    assert build_identity().day == date(2023, 11, 14)
    assert build_identity().build_id.startswith("2023-11-14-")


@pytest.mark.skipif(not shutil.which("git"), reason="without git there is no commit")
def test_else_the_last_commit_counts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Not the time of the build."""
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    monkeypatch.setenv("GIT_COMMITTER_DATE", "1700000000 +0000")
    who = ["-c", "user.name=x", "-c", "user.email=x@example.org"]
    for command in (["init", "-q"], [*who, "commit", "-q", "--allow-empty", "-m", "x"]):
        subprocess.run(["git", "-C", str(tmp_path), *command], check=True)

    assert source_epoch(tmp_path) == 1700000000


def test_a_copy_without_history_takes_its_newest_source(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It still tells a day that means something."""
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))

    assert source_epoch(tmp_path) > 1700000000


def test_a_changed_source_is_another_build(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """And changing it back is the first one again."""
    source = tmp_path / "a.py"
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")
    monkeypatch.setattr(paths, "ROOT", tmp_path)
    monkeypatch.setattr(identity, "SOURCES", (source,))

    ids = []
    for text in ("x = 1", "x = 2", "x = 1"):
        source.write_text(text)
        ids.append(build_identity().build_id)

    assert ids[0] != ids[1]
    assert ids[0] == ids[2]
