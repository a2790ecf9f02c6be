"""Which row of a file can be headings."""

from __future__ import annotations

import pytest

from checkers.judgement.schedule.file.layout import _can_be_headings
from checkers.judgement.schedule.file.records import Record


@pytest.mark.parametrize(
    ("cells", "can_be"),
    [
        (("Circuit", "Type", "x1 (ms)"), True),
        (("Kitchen", "A", "28.4"), False),
        (("28.4", "Type", "x1 (ms)"), False),
        (("28.4", "14.2", "21.3"), False),
        (("", ""), False),
    ],
)
def test_one_figure_of_a_reading_is_enough_to_be_no_heading(
    cells: tuple[str, ...], can_be: bool
) -> None:
    """A row of a device has words in it as well, and is never taken for headings."""
    assert _can_be_headings(Record(1, cells)) is can_be
