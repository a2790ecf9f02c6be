"""The theme's search is changed in just the two places that are known, or the build stops."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from build_tools.search_worker import AS_BEGINNING, AT_ONCE, WHEN_OPENED, in_full_first, when_opened


def test_the_index_waits_until_the_search_is_opened() -> None:
    """One word of the theme's script makes it wait, as it does for pages opened as files."""
    assert when_opened(f"of{AT_ONCE}toggled") == f"of{WHEN_OPENED}toggled"


@pytest.mark.parametrize("change", [in_full_first, when_opened])
@pytest.mark.parametrize("script", ["", 2 * (AS_BEGINNING + AT_ONCE)])
def test_a_theme_that_searches_in_another_way_stops_the_build(
    change: Callable[[str], str], script: str
) -> None:
    """Neither none nor two places are guessed at."""
    with pytest.raises(ValueError, match="another way"):
        change(script)
