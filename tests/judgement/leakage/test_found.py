"""What is found of a leakage has words against each of its two limits."""

from __future__ import annotations

import pytest

from checkers.judgement.leakage.found import Found
from checkers.wording.book import words_of


@pytest.mark.parametrize("found", Found)
def test_each_limit_has_its_own_words(found: Found) -> None:
    """The budget is the code's rule for the sum; the no-trip limit is what a device must bear."""
    budget, no_trip = words_of(found.code(budget=True)), words_of(found.code(budget=False))

    assert budget.about == "standing leakage"
    assert no_trip.about == "no trip by leakage alone"
    assert "the rule for the sum on one device is {limit}" in budget.says
    assert "what the device must bear without tripping is {limit}" in no_trip.says
