"""The table of deciding inputs is whole, and refuses what it does not know."""

from __future__ import annotations

from typing import Any

import pytest

from checkers.domain.device.deciding_inputs import DECIDING, INPUTS, Decides, load_deciding_inputs
from checkers.domain.device.readings import Test as Kind
from checkers.domain.errors import DataError

WHOLE: dict[str, Any] = {test.value: {} for test in Kind}


def test_every_kind_of_test_has_its_deciding_inputs() -> None:
    """No kind of test is forgotten, and a timed test needs waveform and level always."""
    assert {test.value for test in Kind} == set(DECIDING)
    for test in (Kind.TRIP_TIME, Kind.NO_TRIP):
        assert DECIDING[test]["waveform"] is Decides.ALWAYS
        assert DECIDING[test]["level"] is Decides.ALWAYS
    assert set(INPUTS) == {name for inputs in DECIDING.values() for name in inputs}


@pytest.mark.parametrize(
    "wrong",
    [
        {**WHOLE, "impulse": {}},
        {**WHOLE, "ramp": {"colour": "always"}},
        {**WHOLE, "ramp": {"waveform": "sometimes"}},
        {name: {} for name in WHOLE if name != "ramp"},
    ],
    ids=["a test not known", "an input not known", "a word not known", "a test left out"],
)
def test_a_table_that_is_not_whole_is_refused(wrong: dict[str, Any]) -> None:
    """The file is named in the complaint."""
    with pytest.raises(DataError, match="here"):
        load_deciding_inputs(wrong, "here")
