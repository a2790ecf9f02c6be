"""What speaks for a cause and what against, from the readings themselves."""

from __future__ import annotations

from checkers.judgement.inference.explanation import explain
from checkers.judgement.inference.findings import findings_of
from checkers.judgement.inference.reasons import reasons_for
from tests.judgement.inference.a_case import case, reading, time

HUNDRED = [time("16.9 ms", 5), time("> 300 ms"), reading("ramp", "75 mA")]


def test_a_ramp_in_the_band_of_the_wrong_device_speaks_for_it() -> None:
    """75 mA lies between 50 and 100 mA."""
    explained = explain(HUNDRED, case())
    wrong = next(one for one in explained.causes if one.code == "wrong-device")
    speaks_for, against = reasons_for(wrong, explained.causes, explained.evidence)

    assert any(one.startswith("ramp: 75 mA") for one in speaks_for)
    assert not against


def test_no_trip_at_the_rating_speaks_against_a_dead_button() -> None:
    """The reading that cannot be is named first."""
    explained = explain([time("no trip"), time("20 ms", 5)], case())
    button = next(one for one in explained.causes if one.code == "button-failed")
    _, against = reasons_for(button, explained.causes, explained.evidence)

    assert against[0].startswith("trip time ×1: no trip")
    assert "less likely" in against[0]


def test_a_reading_that_nothing_explains_is_named() -> None:
    """A ramp far above what trip times allow, in a device that is otherwise sound."""
    readings = [
        time("25 ms"),
        time("24 ms"),
        time("26 ms"),
        reading("ramp", "88 mA", place="device"),
    ]
    said = [one.says for one in findings_of(explain(readings, case()), 0.05)]

    assert any("unlike every cause" in one for one in said)


def test_readings_that_fit_are_not_called_strange() -> None:
    """Sound readings leave nothing to explain."""
    readings = [time("25 ms"), time("18 ms", 5), reading("ramp", "21 mA")]
    said = [one.says for one in findings_of(explain(readings, case()), 0.05)]

    assert not any("unlike every cause" in one for one in said)
