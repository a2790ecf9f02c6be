"""Device types in their order."""

from __future__ import annotations

import pytest

from checkers.judgement.equipment.type_order import covers, greatest, in_words, least


@pytest.mark.parametrize(
    ("fitted", "needed", "expected"),
    [
        ("A", "AC", True),
        ("AC", "A", False),
        ("B", "F", True),
        ("B+", "B", True),
        ("F", "B", False),
        ("unknown", "AC", False),
    ],
)
def test_a_type_sees_what_narrower_types_see(fitted: str, needed: str, expected: bool) -> None:
    """AC, A, F, B, B+: each sees more than the one before; an unknown type covers nothing."""
    assert covers(fitted, needed) is expected


def test_least_and_greatest_go_by_what_is_sensed() -> None:
    """The order is not that of the alphabet: A is wider than AC, F narrower than B."""
    assert least(["B", "A", "F"]) == "A"
    assert greatest(["AC", "F", "A"]) == "F"


def test_types_are_listed_in_order() -> None:
    """One type stands alone; several end in or."""
    assert in_words(["B"]) == "B"
    assert in_words({"B+", "F", "B"}) == "F, B or B+"
