"""What the readings leave open: the test the code still asks for, and the trip not yet shown."""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.codes import CodeTest
from checkers.domain.quantities import format_number
from checkers.domain.readings import Reading, Test
from checkers.domain.verdicts import Finding, Judges, NextTest, Outcome
from checkers.judgement.case import Case
from checkers.judgement.installation_tests import answers_test, tests_asked_for
from checkers.judgement.judged import Judged
from checkers.judgement.test_level import level_of

NAMES = {
    Test.TRIP_TIME: "trip time",
    Test.NO_TRIP: "no-trip test",
    Test.RAMP: "ramp",
    Test.BUTTON: "test button",
}


def trip_not_shown(judged: Sequence[Judged]) -> list[Finding]:
    """Return a finding where all that was judged passes, but none shows that the device trips."""
    passes = all(one.finding.outcome is Outcome.PASS for one in judged)
    if not passes or any(one.shows_trip for one in judged):
        return []
    return [
        Finding(
            about="trip not shown",
            outcome=Outcome.CANNOT_SAY,
            says="None of these readings shows that the device trips within a limit.",
            judges=Judges.FUNCTION,
            do_next="Take a trip time at ×1 on AC.",
        )
    ]


def next_test(readings: Sequence[Reading], case: Case) -> NextTest | None:
    """Return the first test that the code requires and that is not among the readings."""
    for test in tests_asked_for(case):
        given = (answers_test(one, test, level_of(one, case)) for one in readings)
        if test.standing == "required" and not any(given):
            return NextTest(test=_words(test), why=_why(test))
    return None


def _words(test: CodeTest) -> str:
    name = NAMES.get(Test(test.test), test.test)
    multiple = "" if test.multiple is None else f" at ×{format_number(test.multiple)}"
    return name + multiple + (f" on {test.waveform.upper()}" if test.waveform == "ac" else "")


def _why(test: CodeTest) -> str:
    place = f"{test.citation.document}, {test.citation.edition}"
    return f"{place} asks for it, and it is not among these readings."
