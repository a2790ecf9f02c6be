"""Conditions: when a limit row applies."""

from __future__ import annotations

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.domain.device.device import DELAYS, DeviceType, Form
from checkers.domain.device.readings import Waveform
from checkers.domain.errors import DataError
from checkers.domain.limits.conditions import (
    CHOICES,
    Conditions,
    Interval,
    Situation,
    applies,
    read_conditions,
    together,
)
from checkers.domain.tables.records import Record

VALUES = st.sampled_from([0.0, 6.0, 10.0, 30.0, 100.0])
INTERVALS = st.builds(
    Interval, VALUES, st.sampled_from([10.0, 30.0, 100.0, inf]), st.booleans(), st.booleans()
)
POINTS = [0.0, 3.0, 6.0, 8.0, 10.0, 20.0, 30.0, 60.0, 100.0, 1000.0]


def when(**values: object) -> Conditions:
    """Return conditions as a data file would write them."""
    return read_conditions(Record("made-up.toml", "row 1 when", values))


def test_the_words_are_those_of_devices_and_readings() -> None:
    """A choice offered in a form is known to the tables."""
    types = {one.value for one in DeviceType} - {"unknown"}
    waveforms = {one.value for one in Waveform} - {"unknown"}

    assert types == CHOICES["type"]
    assert {one.value for one in Form} == CHOICES["form"]
    assert {key for key, _ in DELAYS} | {"set"} == CHOICES["delay"]
    assert waveforms <= CHOICES["waveform"]


@given(INTERVALS, INTERVALS)
def test_two_ranges_meet_if_a_value_lies_in_both(one: Interval, other: Interval) -> None:
    """Meeting is what holding a common value means, ends included or not."""
    if any(one.holds(point) and other.holds(point) for point in POINTS):
        assert one.meets(other)
    if not one.meets(other):
        assert not any(one.holds(point) and other.holds(point) for point in POINTS)


@pytest.mark.parametrize(
    ("written", "inside", "outside"),
    [
        ({"above": "10 mA"}, [10.01, 30.0], [10.0]),
        ({"from": "10 mA"}, [10.0, 30.0], [9.99]),
        ({"below": "30 mA"}, [10.0, 29.9], [30.0]),
        ({"up_to": "30 mA"}, [10.0, 30.0], [30.01]),
        ({"from": "30 mA", "up_to": "30 mA"}, [30.0], [29.9, 30.1]),
    ],
)
def test_the_ends_of_a_range_are_inside_or_not_as_written(
    written: dict[str, str], inside: list[float], outside: list[float]
) -> None:
    """Above and below leave the end out, from and up_to take it in."""
    interval = when(rated_residual_current=written).ranges["rated_residual_current"]

    assert all(interval.holds(value) for value in inside)
    assert not any(interval.holds(value) for value in outside)


@pytest.mark.parametrize(
    ("situation", "expected"),
    [
        (Situation(rated=30.0, multiple=5.0), True),
        (Situation(rated=30.0, current=150.0), True),
        (Situation(multiple=5.0), True),
        (Situation(rated=30.0, current=149.0), False),
        (Situation(rated=30.0, multiple=1.0), False),
        (Situation(multiple=1.0), False),
        (Situation(), True),
    ],
)
def test_a_test_current_is_matched_as_a_multiple_or_in_milliamperes(
    situation: Situation, expected: bool
) -> None:
    """150 mA on a 30 mA device is five times its rating."""
    assert applies(when(multiple=5), situation) is expected


@pytest.mark.parametrize(
    ("dc", "rated", "expected"),
    [(0.0, 30.0, False), (6.0, 30.0, True), (12.0, 30.0, True), (12.1, 30.0, False)],
)
def test_a_row_for_superimposed_dc_answers_only_up_to_that_dc(
    dc: float, rated: float, expected: bool
) -> None:
    """0.4 times 30 mA is 12 mA."""
    row = when(dc_residual_of_rated=0.4)

    assert applies(row, Situation(dc_residual=dc, rated=rated)) is expected


def test_a_row_without_superimposed_dc_does_not_answer_with_it() -> None:
    """DC through the device is never silently ignored."""
    assert applies(when(waveform=["ac"]), Situation(waveform="ac"))
    assert not applies(when(waveform=["ac"]), Situation(waveform="ac", dc_residual=1.0))


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        ({"type": ["A"]}, {"type": ["A", "F"]}, True),
        ({"type": ["A"]}, {"type": ["F"]}, False),
        ({"type": ["A"]}, {}, True),
        ({"multiple": 1}, {"multiple": 5}, False),
        ({"multiple": 5}, {"current": "250 mA"}, False),
        ({"dc_residual": "6 mA"}, {"dc_residual": "10 mA"}, True),
        ({"dc_residual": "6 mA"}, {}, False),
    ],
)
def test_rows_go_together_if_one_device_and_test_could_meet_both(
    one: dict[str, object], other: dict[str, object], expected: bool
) -> None:
    """That is what makes two rows overlap."""
    assert together(when(**one), when(**other)) is expected


@pytest.mark.parametrize(
    ("written", "words"),
    [
        ({"type": ["C"]}, "holds 'C'"),
        ({"tpye": ["A"]}, "unknown key 'tpye'"),
        ({"multiple": 5, "current": "250 mA"}, "one current in two ways"),
        ({"dc_residual": "6 mA", "dc_residual_of_rated": 0.4}, "one current in two ways"),
        ({"rated_residual_current": {}}, "needs above, from, below or up_to"),
        ({"rated_residual_current": {"above": "9 mA", "from": "9 mA"}}, "same end twice"),
        ({"rated_residual_current": {"above": "9 mA", "below": "6 mA"}}, "ends before it starts"),
        ({"rated_residual_current": {"above": "9 ms"}}, "unit of current"),
    ],
)
def test_conditions_that_make_no_sense_are_refused(written: dict[str, object], words: str) -> None:
    """The error says what is wrong."""
    with pytest.raises(DataError, match=words):
        when(**written)
