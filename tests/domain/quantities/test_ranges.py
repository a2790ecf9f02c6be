"""A range names the unit of each end."""

from __future__ import annotations

import pytest

from checkers.domain.quantities.ranges import IN_SENTENCES, between, range_in_words


@pytest.mark.parametrize(
    ("low", "high", "unit", "words"),
    [
        (500.0, 1000.0, "mA", "500 mA to 1 A"),  # IEC 61008-1, 5.3.3: 0.5 IΔn to IΔn, IΔn 1 A
        (130.0, 2000.0, "ms", "130 ms to 2 s"),
        (15.0, 30.0, "mA", "15 mA to 30 mA"),
        (None, 300.0, "ms", "≤ 300 ms"),
        (60.0, None, "ms", "≥ 60 ms"),
        (None, None, "ms", ""),
        (22.0, 22.0, "mA", "22 mA"),
    ],
)
def test_each_end_has_its_own_unit(
    low: float | None, high: float | None, unit: str, words: str
) -> None:
    """NIST SP 811, 7.7 (number from memory): 0 V to 5 V, and not 0 to 5 V."""
    assert words == range_in_words(low, high, unit)


def test_one_end_may_be_said_in_a_sentence() -> None:
    """At most, where a sign would stand oddly."""
    assert between("", "300 ms", IN_SENTENCES) == "at most 300 ms"
