"""The efforts of changes are read strictly."""

from __future__ import annotations

import pytest

from checkers.domain.errors import DataError
from checkers.judgement.series.change.efforts import EFFORTS, load_efforts

WHOLE = {"effort": 2, "says": "a change", "evidence": "common-practice"}


def test_every_kind_of_change_has_an_effort() -> None:
    """A type B is the dearest of the types."""
    assert {"type-A", "type-F", "type-B", "type-B+", "beside", "detection", "own-device"} == set(
        EFFORTS
    )
    assert EFFORTS["type-A"] < EFFORTS["type-F"] < EFFORTS["type-B"]


@pytest.mark.parametrize(
    "broken",
    [
        {**WHOLE, "effort": 0},
        {**WHOLE, "effort": "2"},
        {**WHOLE, "evidence": "hearsay"},
        {**WHOLE, "more": 1},
        {"effort": 2, "evidence": "common-practice"},
    ],
)
def test_an_entry_that_is_not_whole_stops_the_build(broken: dict[str, object]) -> None:
    """The file and the entry are named."""
    with pytest.raises(DataError, match=r"changes\.toml, type-A"):
        load_efforts({"type-A": broken}, "changes.toml")
