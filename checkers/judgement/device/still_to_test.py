"""What the readings leave open: the tests the code still requires, and the trip not yet shown."""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.codes.registry import CodeTest
from checkers.domain.device.readings import Reading, Test, Waveform
from checkers.domain.limits.words import WAVEFORMS
from checkers.domain.quantities.measured_value import SHOWS_NOTHING
from checkers.domain.quantities.quantity import format_number
from checkers.domain.verdicts import Finding, Judges, NextTest, Outcome, StillToDo
from checkers.judgement.case import Case
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.readings.installation_tests import answers_test, tests_asked_for
from checkers.judgement.readings.verdict import Judged

NAMES = {
    Test.TRIP_TIME: "trip time",
    Test.NO_TRIP: "no-trip test",
    Test.RAMP: "ramp",
    Test.BUTTON: "test button",
}
SO_FAR, STILL_TO_DO = "pass so far", "still to do"
SHORT = {Waveform.AC.value: "AC"}


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


def still_to_do(readings: Sequence[Reading], case: Case) -> tuple[StillToDo, ...]:
    """Return the tests that the code requires and that none of the readings answers."""
    results = [one for one in readings if one.measured.said not in SHOWS_NOTHING]
    missing = (
        test
        for test in tests_asked_for(case)
        if test.standing == "required" and not any(_answers(one, test, case) for one in results)
    )
    return tuple(dict.fromkeys(map(_still_to_do, missing)))


def _answers(reading: Reading, test: CodeTest, case: Case) -> bool:
    served = reading.test in test.served_by
    return served or answers_test(reading, test, level_of(reading, case))


def _still_to_do(test: CodeTest) -> StillToDo:
    return StillToDo(
        test=test.test,
        multiple=test.multiple,
        waveform=test.waveform,
        code=test.designation,
        clause=test.citation.clause,
        words=f"{_words(test)} ({test.citation.document})",
    )


def _words(test: CodeTest) -> str:
    multiple = "" if test.multiple is None else f"×{format_number(test.multiple)} "
    waveform = SHORT.get(test.waveform) or WAVEFORMS.get(test.waveform, "")
    return f"{multiple}{NAMES[Test(test.test)]}{f' on {waveform}' if waveform else ''}"


def pass_so_far(missing: Sequence[str]) -> str:
    """Return a pass with what is still to do, in words: never a bare pass."""
    return f"{SO_FAR}; {STILL_TO_DO}: {', '.join(missing)}"


def next_test(missing: Sequence[StillToDo]) -> NextTest | None:
    """Return the first of the tests that are still to do, and why."""
    if not missing:
        return None
    first = missing[0]
    why = f"{first.code} requires it, and it is not among these readings."
    return NextTest(test=first.words, why=why)
