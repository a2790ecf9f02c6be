"""What the theme writes is changed in just the places that are known, or the build stops."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from build_tools.theme.accessibility import REPAIRS, repaired
from build_tools.theme.changes import SCRIPT, change_file, changed
from build_tools.theme.keys import LETTERS, mend_keys
from build_tools.theme.search import IN_FULL_FIRST, SEARCHER, WAITING, mend_search
from build_tools.theme.start import CHANGES, LOADED, mend_start, waiting

# Each way to mend files, with what it changes by the pattern of the file's name.
MENDED: dict[Callable[[Path], None], dict[str, Mapping[str, str]]] = {
    mend_keys: {SCRIPT: dict.fromkeys(LETTERS, "")},
    mend_search: {SCRIPT: WAITING, SEARCHER: IN_FULL_FIRST},
    mend_start: {SCRIPT: CHANGES},
}
TEXTS: dict[Callable[[str], str], Mapping[str, str]] = {
    repaired: REPAIRS,
    waiting: {LOADED: "any"},
}


def _around(parts: Mapping[str, str]) -> str:
    return "; ".join(["first", *parts, "last"])


def _named(site: Path, pattern: str) -> Path:
    file = site / pattern.replace("*", "0123.min")
    file.parent.mkdir(parents=True, exist_ok=True)
    return file


@pytest.mark.parametrize("mend", MENDED)
def test_a_file_is_changed_in_its_places_and_nowhere_else(
    tmp_path: Path, mend: Callable[[Path], None]
) -> None:
    """What stands around them stays."""
    for pattern, changes in MENDED[mend].items():
        _named(tmp_path, pattern).write_text(_around(changes), encoding="utf-8")

    mend(tmp_path)

    for pattern, changes in MENDED[mend].items():
        expected = "; ".join(["first", *changes.values(), "last"])
        assert _named(tmp_path, pattern).read_text(encoding="utf-8") == expected


@pytest.mark.parametrize("times", [0, 2])
@pytest.mark.parametrize("change", TEXTS)
def test_a_page_of_another_theme_stops_the_build(change: Callable[[str], str], times: int) -> None:
    """Neither none nor two places are guessed at."""
    with pytest.raises(ValueError, match="another way"):
        change(times * _around(TEXTS[change]))


@pytest.mark.parametrize("times", [0, 2])
def test_a_file_of_another_theme_stops_the_build(tmp_path: Path, times: int) -> None:
    """The complaint names what was looked for, and where it is told why."""
    _named(tmp_path, SCRIPT).write_text(times * "it", encoding="utf-8")

    with pytest.raises(ValueError, match="writes it in another way now: see here"):
        change_file(tmp_path, SCRIPT, {"it": "that"}, "here")


def test_every_change_is_made_in_turn() -> None:
    """One may build on what the one before it wrote."""
    assert changed("a", {"a": "b", "b": "c"}, "here") == "c"
