"""Limits: which rows answer a question, and what they say."""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.limits.tables import TABLES, rows, rows_in

TODAY = date(2026, 11, 24)


def greatest_times(**asked: object) -> dict[float | None, float | None]:
    """Return the greatest time [ms] at each test current [mA]."""
    rated = asked.get("rated")
    assert rated is None or isinstance(rated, float)
    found = rows("trip-time", on=TODAY, **asked)
    return {row.level(rated): row.at_most(rated) for row in found}


def test_rows_come_lowest_test_current_first() -> None:
    """Whoever looks for the greatest current not above the test finds it last."""
    found = rows("trip-time", on=TODAY, form="rccb", type="A", delay="none", rated=30.0)
    levels = [row.level(30.0) or 0.0 for row in found]

    assert levels == sorted(levels)
    assert len(levels) > 4


def test_a_device_of_unknown_standard_gets_only_what_may_be_assumed() -> None:
    """An old British limit is not laid on a device that does not claim that standard."""
    documents = {row.document for row in rows("trip-time", on=TODAY, form="rccb")}

    assert "iec-61008-1" in documents
    assert "bs-4293" not in documents


def test_a_device_made_to_an_older_standard_gets_only_its_limits() -> None:
    """With BS 4293 on the label, 300 ms is not the limit."""
    found = rows("trip-time", on=TODAY, made_to="bs-4293", form="rccb", delay="none", waveform="ac")

    assert [(row.document, row.at_most()) for row in found] == [
        ("bs-4293", 200.0),
        ("bs-4293", 40.0),
    ]


def test_a_delay_marked_in_the_older_manner_moves_both_limits() -> None:
    """200 ms and half of the delay, to 200 ms and the whole of it."""
    (row,) = rows(
        "trip-time", on=TODAY, made_to="bs-4293", delay="set", set_delay=100.0, waveform="ac"
    )

    assert (row.at_least(100.0, 100.0), row.at_most(100.0, 100.0)) == (250.0, 300.0)
    assert row.at_most(100.0, None) is None


def test_a_standard_that_builds_on_another_brings_its_rows_too() -> None:
    """A type B device keeps the AC limits of its general standard."""
    found = rows("trip-time", on=TODAY, made_to="iec-62423", form="rccb", type="B", rated=30.0)

    assert {row.document for row in found} == {"iec-61008-1", "iec-62423"}


def test_the_day_decides_between_two_editions() -> None:
    """On the first day of amendment 2 the limit at five times is gone, the day before it binds."""
    asked = {"delay": "none", "rated": 30.0, "waveform": "ac", "multiple": 5.0}
    before = rows_in("bs-7671/operating-times", on=date(2022, 3, 27), **asked)
    after = rows_in("bs-7671/operating-times", on=date(2022, 3, 28), **asked)

    assert [row.at_most() for row in before] == [40.0]
    assert after == ()


def test_an_unknown_rating_gives_no_figure_and_no_guess() -> None:
    """A share of an unknown rating is not a number."""
    (row,) = rows("operating-current", on=TODAY, form="rccb", type="AC", waveform="ac")

    assert row.at_least(None) is None
    assert row.at_most(None) is None


def test_both_ways_to_prove_the_shortest_time_are_offered_at_30_milliamperes() -> None:
    """Five times the rating or 0.25 A: the maker's choice."""
    asked = {"form": "rccb", "type": "AC", "delay": "none", "rated": 30.0, "waveform": "ac"}
    levels = greatest_times(**asked)

    assert levels[150.0] == levels[250.0] == 40.0
    assert 250.0 not in greatest_times(**asked, option="five-times")
    assert 150.0 not in greatest_times(**asked, option="quarter-ampere")


def test_above_30_milliamperes_there_is_no_choice() -> None:
    """A 100 mA device proves its shortest time at five times its rating."""
    asked = {"form": "rccb", "type": "AC", "delay": "none", "rated": 100.0, "waveform": "ac"}

    assert 250.0 not in greatest_times(**asked)
    assert greatest_times(**asked)[500.0] == 40.0


def test_a_selective_device_of_30_milliamperes_has_no_limits() -> None:
    """The standard knows no type S at or below 30 mA."""
    assert rows("trip-time", on=TODAY, form="rccb", delay="S", rated=30.0, waveform="ac") == ()


def test_a_short_delay_keeps_the_general_limit_and_adds_a_least_time() -> None:
    """G waits about 10 ms and may take no longer than a general device."""
    found = rows(
        "trip-time", on=TODAY, form="rccb", delay="G", rated=30.0, waveform="ac", multiple=1.0
    )

    assert [row.at_most() for row in found if row.at_most()] == [300.0]
    assert [row.at_least() for row in found if row.at_least()] == [10.0]


def test_a_long_set_delay_leaves_the_greatest_time_to_its_maker() -> None:
    """Above 60 ms only the least time at twice the rating is known: the delay itself."""
    found = rows(
        "trip-time",
        on=TODAY,
        form="modular",
        delay="set",
        set_delay=250.0,
        rated=300.0,
        waveform="ac",
    )

    assert all(row.at_most(300.0, 250.0) is None for row in found)
    assert [row.at_least(300.0, 250.0) for row in found if not row.undeclared] == [250.0]


def test_a_monitor_has_no_break_times() -> None:
    """It warns and does not break."""
    assert rows("trip-time", on=TODAY, form="monitor") == ()


def test_the_protective_kind_of_dc_detection_may_operate_before_a_plain_type_a() -> None:
    """4.5 mA is below 0.35 times 30 mA."""
    asked = {"waveform": "half-wave", "rated": 30.0}
    (detection,) = rows("operating-current", on=TODAY, form="rdc-dd", option="protective", **asked)
    (plain,) = rows("operating-current", on=TODAY, form="rccb", type="A", **asked)

    assert detection.at_least(30.0) == 4.5
    assert plain.at_least(30.0) == 10.5


def test_two_standards_for_charging_are_not_mixed() -> None:
    """A cable's control box ends at 300 mA and 40 ms, a charge point at 200 mA and 100 ms."""
    box = rows("trip-time", on=TODAY, made_to="iec-62752", form="portable", waveform="smooth-dc")
    point = rows("trip-time", on=TODAY, form="rdc-dd", waveform="smooth-dc")

    assert [(row.level(None), row.at_most()) for row in box][-1] == (300.0, 40.0)
    assert [(row.level(None), row.at_most()) for row in point][-1] == (200.0, 100.0)


def test_an_unknown_table_is_an_error_and_not_an_empty_answer() -> None:
    """A slip in a table's name must not look like 'no limit'."""
    with pytest.raises(KeyError):
        rows_in("bs-7671/no-such-table", on=TODAY)


def test_an_unknown_condition_is_an_error_and_not_ignored() -> None:
    """A slip in a condition's name must not widen the answer."""
    with pytest.raises(TypeError):
        rows("trip-time", on=TODAY, wavform="ac")


def test_the_same_question_is_answered_from_memory() -> None:
    """A board of hundreds of like devices asks the tables once."""
    first = rows("trip-time", on=TODAY, form="rcbo", type="A", rated=30.0)

    assert rows("trip-time", on=TODAY, form="rcbo", type="A", rated=30.0) is first


def test_a_current_that_must_never_operate_is_told_apart_from_one_without_limit() -> None:
    """The monitoring kind never operates on 30 mA of AC."""
    by_level = {row.level(None): row for row in TABLES["iec-62955/no-trip-times"].rows}

    assert by_level[30.0].never
    assert by_level[30.0].at_most() is None
    assert not by_level[60.0].never
