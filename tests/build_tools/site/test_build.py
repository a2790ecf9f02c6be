"""The site is built once, however many ask for it at one time."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from pathlib import Path
from threading import Barrier, BrokenBarrierError

import pytest

from build_tools.files import paths
from build_tools.site import build

PATIENCE = 2  # seconds that a build waits for another one to begin beside it


@pytest.fixture
def built(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """Where each build of a site was made; none ends before another one could have begun."""
    made: list[Path] = []
    beside = Barrier(2)

    def make_site(folder: Path, _runtime: Path) -> None:
        made.append(folder)
        with suppress(BrokenBarrierError):
            beside.wait(PATIENCE)
        (folder / "index.html").write_text("whole", encoding="utf-8")

    monkeypatch.setattr(paths, "BUILD", tmp_path)
    monkeypatch.setattr(paths, "SITE", tmp_path / "site")
    monkeypatch.setattr(build, "MARKER", tmp_path / "site.finished")
    monkeypatch.setattr(build, "SOURCES", ())
    monkeypatch.setattr(build, "ensure_runtime", lambda: tmp_path)
    monkeypatch.setattr(build, "make_site", make_site)
    return made


def test_two_at_once_build_it_once(built: list[Path]) -> None:
    """The second waits for the first, and both have a whole one."""
    with ThreadPoolExecutor(2) as pool:
        sites = list(pool.map(lambda _: build.ensure_site(), range(2)))

    assert [(site / "index.html").read_text(encoding="utf-8") for site in sites] == ["whole"] * 2
    assert len(built) == 1
