"""A reading is called what a person calls it."""

from __future__ import annotations

import pytest

from checkers.wording.reading_names import spoken


@pytest.mark.parametrize(
    ("about", "said"),
    [
        ("trip-time ×1 0°", "trip time ×1 0°"),
        ("no-trip ×0.5", "no-trip test ×0.5"),
        ("ramp half wave", "ramp half wave"),
        ("trip not shown", "trip not shown"),
    ],
)
def test_a_test_is_spoken_of_by_its_name(about: str, said: str) -> None:
    """The short name of a request becomes the words of the trade."""
    assert spoken(about) == said
