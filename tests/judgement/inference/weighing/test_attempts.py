"""Readings become tests that the model can predict, or are left out with a reason."""

from __future__ import annotations

import pytest

from checkers.judgement.inference.weighing.attempts import noted_tests
from checkers.wording.book import words_of
from tests.judgement.inference.a_case import case, reading, time


def test_the_test_current_follows_from_multiple_and_waveform() -> None:
    """×1 is the rating on AC; the half-wave step drives 1.4 times as much."""
    used, left_out = noted_tests(
        [time("28 ms"), time("28 ms", waveform="half-wave"), time("20 ms", 5)], case()
    )

    assert [one.attempt.current for one in used] == [30.0, 42.0, 150.0]
    assert not left_out


def test_only_the_readings_before_any_operation_are_first() -> None:
    """A no-trip test that holds exercises nothing; the trip after it is the first."""
    used, _ = noted_tests(
        [reading("no-trip", "> 1999 ms", multiple=0.5), time("90 ms"), time("28 ms")], case()
    )

    assert [one.attempt.first for one in used] == [True, True, False]


def test_loads_of_a_reading_go_before_those_of_the_circuit() -> None:
    """Where a reading does not say, the circuit does."""
    used, _ = noted_tests(
        [time("28 ms"), time("28 ms", loads="off")], case(circuit={"loads": "on"})
    )

    assert [one.attempt.loads for one in used] == ["on", "off"]


@pytest.mark.parametrize(
    ("value", "fields", "why"),
    [
        ("test not completed", {"test": "trip-time", "multiple": 1}, "no result"),
        ("28.5/18", {"test": "trip-time", "multiple": 1}, "two figures"),
        ("33 ms", {"test": "trip-time"}, "neither its multiple"),
        ("33 mA", {"test": "trip-time", "multiple": 1}, "check its unit"),
        ("33", {"test": "unknown"}, "which test"),
    ],
)
def test_what_cannot_be_used_is_left_out_with_its_reason(
    value: str, fields: dict[str, object], why: str
) -> None:
    """Nothing is guessed."""
    kind = str(fields.pop("test"))
    used, left_out = noted_tests([reading(kind, value, **fields)], case())

    assert not used
    assert why in words_of(left_out[0].code).says.format_map(left_out[0].facts)


def test_a_current_without_a_test_is_taken_as_a_ramp() -> None:
    """27 mA can be nothing else."""
    used, _ = noted_tests([reading("unknown", "27 mA")], case())

    assert used[0].attempt.is_ramp


def test_the_instruments_uncertainty_goes_before_the_models() -> None:
    """Without one, a trip current has 10 % of the rating (IEC 61557-6), with coverage 2."""
    used, _ = noted_tests([reading("ramp", "22 mA")], case())

    assert used[0].attempt.current_uncertainty == pytest.approx(1.5)
