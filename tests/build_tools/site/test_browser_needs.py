"""What runs the checkers is told in one table, and everywhere else as it stands there."""

from __future__ import annotations

import re

from build_tools.files import paths
from build_tools.pages.macros.browsers import browsers_macro
from build_tools.site.browser_needs import in_words, needs, old_enough
from build_tools.site.script_floors import SOURCES

ABILITIES = (SOURCES / "shared" / "abilities.js").read_text(encoding="utf-8")
SEEN = re.findall(r'^  "([\w-]+)": \(\) =>', ABILITIES, re.MULTILINE)


def test_the_newest_of_all_needs_decides() -> None:
    """WebAssembly's exceptions came to Chrome in 95, module workers to Firefox in 114, and
    Object.hasOwn to Safari in 15.4 (the makers' notes on these releases).
    """
    assert old_enough("checkers") == {"chrome": "95", "firefox": "114", "safari": "15.4"}


def test_versions_are_compared_as_numbers() -> None:
    """A version 105 is newer than 95, and 15.4 newer than 15."""
    assert old_enough("checkers", "looks") == {"chrome": "105", "firefox": "121", "safari": "17.4"}


def test_the_readme_tells_the_same() -> None:
    """It is read where no table is built."""
    readme = (paths.ROOT / "README.md").read_text(encoding="utf-8")

    assert f"The checkers run in {in_words('checkers')}, and newer." in readme


def test_what_is_looked_for_in_a_browser_is_in_the_table() -> None:
    """So that a reader is told its name."""
    assert len(SEEN) >= 3
    assert set(SEEN) <= {key for key, need in needs().items() if need["for"] == "checkers"}


def test_the_table_names_every_need_and_what_follows() -> None:
    """With the versions that run the checkers below."""
    shown = browsers_macro("", "")

    assert all(need["name"] in shown for need in needs().values())
    assert "<td>95</td><td>114</td><td>15.4</td>" in shown
