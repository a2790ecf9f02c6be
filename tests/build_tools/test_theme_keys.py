"""The theme's keys of one letter are taken out in just the places that are known."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.theme_keys import LETTERS, mend_keys, without_letters


def test_only_the_letters_are_taken_out() -> None:
    """What stands around them in the theme's script stays."""
    assert without_letters("; ".join(["first", *LETTERS, "last"])) == "first; ; ; ; last"


@pytest.mark.parametrize("script", ["", 2 * "".join(LETTERS)])
def test_a_theme_that_listens_in_another_way_stops_the_build(script: str) -> None:
    """Neither none nor two places are guessed at."""
    with pytest.raises(ValueError, match="another way"):
        without_letters(script)


def test_the_script_of_the_site_is_changed(tmp_path: Path) -> None:
    """The one that every page of the theme asks for."""
    bundle = tmp_path / "assets/javascripts/bundle.0123.min.js"
    bundle.parent.mkdir(parents=True)
    bundle.write_text("".join(LETTERS), encoding="utf-8")

    mend_keys(tmp_path)

    assert bundle.read_text(encoding="utf-8") == ""
