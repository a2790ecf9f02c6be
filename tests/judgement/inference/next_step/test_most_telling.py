"""The next test is the one that is expected to tell most."""

from __future__ import annotations

import pytest
from scipy.stats import entropy

from checkers.domain.device.placed_readings import PlacedReading
from checkers.domain.verdicts import NextTest
from checkers.judgement.case import Case
from checkers.judgement.inference.explanation import explain
from checkers.judgement.inference.next_step.most_telling import _information, next_test
from tests.judgement.inference.a_case import case, reading, time

JOINT = ((0.10, 0.30, 0.02), (0.25, 0.05, 0.28))
SHARES = (0.35, 0.35, 0.30)


def proposed(readings: list[PlacedReading], of: Case) -> NextTest | None:
    """Return the test proposed after some readings."""
    explained = explain(readings, of)
    return next_test(of, explained.evidence, explained.causes)


def test_information_is_the_entropy_of_the_cause_that_an_outcome_takes_away() -> None:
    """SciPy's entropies, put together by the textbook definition."""
    before = entropy(SHARES, base=2)
    after = sum(sum(row) * entropy(row, base=2) for row in JOINT)

    assert _information(JOINT, SHARES) == pytest.approx(before - after)


def test_a_wrong_device_is_told_by_reading_its_marking() -> None:
    """Passes five times, holds at one times, ramps at 75 mA."""
    readings = [time("16.9 ms", 5), time("> 300 ms"), reading("ramp", "75 mA")]
    test = proposed(readings, case())

    assert test is not None
    assert "rating, type and delay" in test.test
    assert any("Another device than noted" in one for one in test.outcomes)


def test_a_missing_bond_is_told_by_looking_at_it() -> None:
    """On a source that runs on its own, nothing trips."""
    of = case()
    explained = explain([time("no trip")], of, supply="own")
    test = next_test(of, explained.evidence, explained.causes)

    assert test is not None
    assert "bond from neutral to earth" in test.test


def test_what_is_known_is_not_asked_again() -> None:
    """Measured DC and leakage, and a device seen to open, need no second look."""
    of = case(circuit={"dc_residual": "1 mA", "standing_leakage": "1 mA", "seen_to_open": "yes"})
    test = proposed([time("> 300 ms")], of)

    assert test is None or not any(
        words in test.test for words in ("DC-reading clamp", "leakage clamp", "watch which")
    )


def test_every_outcome_says_what_it_would_mean() -> None:
    """Each has its chance and the cause it would point to."""
    test = proposed([time("> 300 ms"), reading("button", "operates")], case())

    assert test is not None
    assert len(test.outcomes) >= 2
    assert all(one.startswith("If ") and "most likely" in one for one in test.outcomes)
