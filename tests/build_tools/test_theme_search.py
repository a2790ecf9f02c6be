"""The theme's search is changed in just the places that are known, or the build stops."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.theme_search import (
    AS_BEGINNING,
    AT_ONCE,
    in_full_first,
    mend_search,
    when_opened,
)


def test_a_short_word_is_looked_for_as_it_is() -> None:
    """The change is made once, where the theme makes beginnings of words."""
    mended = in_full_first(f"a{AS_BEGINNING}b")

    assert "r.length<3?r" in mended
    assert AS_BEGINNING not in mended


def test_the_index_waits_until_the_search_is_opened() -> None:
    """Both places of the theme's script that ask for it are changed, and nothing else."""
    found = when_opened("; ".join(["first", *AT_ONCE, "last"]))

    assert found == "; ".join(["first", *AT_ONCE.values(), "last"])


@pytest.mark.parametrize("change", [in_full_first, when_opened])
@pytest.mark.parametrize("script", ["", 2 * "".join([AS_BEGINNING, *AT_ONCE])])
def test_a_theme_that_searches_in_another_way_stops_the_build(
    change: Callable[[str], str], script: str
) -> None:
    """Neither none nor two places are guessed at."""
    with pytest.raises(ValueError, match="another way"):
        change(script)


def test_the_files_of_the_site_are_changed(tmp_path: Path) -> None:
    """The one script that searches, and the one that asks for its index."""
    scripts = tmp_path / "assets/javascripts"
    worker, bundle = scripts / "workers/search.0123.min.js", scripts / "bundle.0123.min.js"
    worker.parent.mkdir(parents=True)
    worker.write_text(AS_BEGINNING, encoding="utf-8")
    bundle.write_text("".join(AT_ONCE), encoding="utf-8")

    mend_search(tmp_path)

    assert "^20" in worker.read_text(encoding="utf-8")
    assert bundle.read_text(encoding="utf-8") == "".join(AT_ONCE.values())
