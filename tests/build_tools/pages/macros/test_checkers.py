"""What is shown of a checker beside its form."""

from __future__ import annotations

import re

from build_tools.pages.macros.checkers import examples_macro


def test_an_example_ends_in_the_word_that_its_bar_will_show() -> None:
    """A plan is a plan, not something that cannot be said; a plan with a gap says so."""
    words = re.findall(r"</a>: (.+)</li>", str(examples_macro("test-plan", "")))

    assert words == [*["Plan"] * 5, "Cannot say"]
    assert re.findall(r"</a>: (.+)</li>", str(examples_macro("series", ""))) == [
        "Fail",
        "Pass",
        "Cannot say",
    ]
