"""Which of some times tells of the current of a fault, and what."""

from __future__ import annotations

import pytest

from checkers.domain.device.readings import Reading
from checkers.domain.verdicts import Outcome
from checkers.judgement.device.times_at_fault import Fault, Timed, at_fault, worst_of

FAULT = Fault(80.0, 100.0, 110.0)
PASS, FAIL = Outcome.PASS, Outcome.FAIL
BORDERLINE, CANNOT_SAY = Outcome.BORDERLINE, Outcome.CANNOT_SAY


@pytest.mark.parametrize(
    ("times", "expected"),
    [
        ([(80.0, PASS)], PASS),
        ([(81.0, PASS)], BORDERLINE),
        ([(100.0, FAIL)], BORDERLINE),
        ([(110.0, FAIL)], FAIL),
        ([(150.0, PASS)], CANNOT_SAY),
        ([(150.0, PASS), (60.0, PASS)], PASS),
        ([(150.0, FAIL), (60.0, PASS)], FAIL),
        ([(70.0, BORDERLINE), (60.0, PASS)], BORDERLINE),
        ([(70.0, FAIL), (60.0, PASS)], CANNOT_SAY),
        ([(15.0, PASS), (150.0, PASS)], CANNOT_SAY),
        ([(30.0, FAIL)], None),
        ([(15.0, FAIL)], None),
    ],
)
def test_what_is_quick_at_less_passes_and_what_is_slow_at_more_fails(
    times: list[tuple[float, Outcome]], expected: Outcome | None
) -> None:
    """At more current a device is no slower; of 30 mA, a fault of 100 mA, 80 to 110 mA."""
    found = at_fault([Timed(Reading(), *one) for one in times], FAULT, 30.0)

    assert (found and found.outcome) == expected


def test_there_is_no_worst_of_none() -> None:
    """Nothing was measured, so nothing is told."""
    assert worst_of([]) is None
