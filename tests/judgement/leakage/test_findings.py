"""The older margin of the trade is told beside every rule for the sum of leakage."""

from __future__ import annotations

import pytest

from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import TABLES

ROWS = [row for one in TABLES.values() if one.measures == "standing-leakage" for row in one.rows]


@pytest.mark.parametrize("row", ROWS)
def test_a_rule_for_the_sum_is_a_share_of_the_rating(row: Row) -> None:
    """As the margin is: where the one is known so is the other, and none is told as 0 mA."""
    assert row.at_most(30.0)
    assert row.at_most(None) is None
