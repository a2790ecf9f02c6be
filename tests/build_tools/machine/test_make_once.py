"""What takes long to make is made once, and a half-made one is made again."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from build_tools.files import paths
from build_tools.machine.make_once import make_once

# Each says that it is there, and none ends its making before both have said so.
PROCESS = """
import sys, time
from pathlib import Path
from build_tools.files import paths
from build_tools.machine.make_once import make_once

folder, name = Path(sys.argv[1]), sys.argv[2]
paths.BUILD = folder

def make():
    (folder / f"made by {name}").touch()
    while len(list(folder.glob("* is there"))) < 2:
        time.sleep(0.05)
    time.sleep(1)

(folder / f"{name} is there").touch()
make_once(folder, folder / "deep" / "finished", "abc", make)
"""


@pytest.fixture(autouse=True)
def locks_of_its_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Keep the project's own locks out of it."""
    monkeypatch.setattr(paths, "BUILD", tmp_path)


def test_two_processes_at_once_make_it_once(tmp_path: Path) -> None:
    """The second waits, then finds it made."""
    command = [sys.executable, "-c", PROCESS, str(tmp_path)]
    both = [subprocess.Popen([*command, name], cwd=paths.ROOT) for name in ("one", "two")]

    assert [one.wait() for one in both] == [0, 0]
    assert len(list(tmp_path.glob("made by *"))) == 1


def test_it_is_made_again_for_other_sources_alone(tmp_path: Path) -> None:
    """Equal sources make nothing."""
    made: list[str] = []
    for wanted in ("abc", "abc", "abd"):
        make_once(tmp_path, tmp_path / "finished", wanted, lambda: made.append("once"))

    assert len(made) == 2


def test_one_that_is_gone_is_made_again(tmp_path: Path) -> None:
    """Its marker alone is nothing to serve."""
    made: list[str] = []
    for _ in range(2):
        make_once(tmp_path / "gone", tmp_path / "finished", "abc", lambda: made.append("once"))

    assert len(made) == 2


def test_one_that_broke_off_is_made_again(tmp_path: Path) -> None:
    """And the next process finds no lock in its way."""
    made: list[str] = []

    def breaks() -> None:
        raise ValueError("in the middle")

    make_once(tmp_path, tmp_path / "finished", "abc", lambda: None)
    with pytest.raises(ValueError, match="in the middle"):
        make_once(tmp_path, tmp_path / "finished", "abd", breaks)
    make_once(tmp_path, tmp_path / "finished", "abc", lambda: made.append("again"))

    assert made == ["again"]
