"""A test may have Firefox otherwise than it comes, and leaves it as it was."""

from __future__ import annotations

import pytest

from tests.engines.engine import Engine

DARK = "layout.css.prefers-color-scheme.content-override"
ASKED = "return matchMedia('(prefers-color-scheme: dark)').matches"


@pytest.mark.firefox_preferences({DARK: 0})
def test_a_preference_holds_for_the_test_that_asks_for_it(engine: Engine) -> None:
    """Dark was asked for."""
    assert engine.run(ASKED)


@pytest.mark.firefox_preferences({})
def test_a_preference_is_as_it_was_in_the_next_test(engine: Engine) -> None:
    """Light is what a new profile gives."""
    assert not engine.run(ASKED)
