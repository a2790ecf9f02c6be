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
from checkers.wording.book import part
from checkers.wording.finding import finding

NAMES = {
    Test.TRIP_TIME: "device.trip-time",
    Test.NO_TRIP: "device.no-trip",
    Test.RAMP: "device.ramp",
    Test.BUTTON: "device.button",
}
SO_FAR, STILL_TO_DO = part("device.so-far"), part("device.still-to-do")


def trip_not_shown(judged: Sequence[Judged]) -> list[Finding]:
    """Return a finding where all that was judged passes, but none shows that the device trips."""
    passes = all(one.finding.outcome is Outcome.PASS for one in judged)
    if not passes or any(one.shows_trip for one in judged):
        return []
    return [finding("device.trip-not-shown", Outcome.CANNOT_SAY, Judges.FUNCTION)]


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
        words=part("device.of-document", test=_words(test), document=test.citation.document),
    )


def _words(test: CodeTest) -> str:
    times = format_number(test.multiple) if test.multiple is not None else ""
    multiple = part("device.multiple", multiple=times) if times else ""
    ac = test.waveform == Waveform.AC
    waveform = part("device.ac") if ac else WAVEFORMS.get(test.waveform, "")
    on = part("device.on", waveform=waveform) if waveform else ""
    return f"{multiple}{part(NAMES[Test(test.test)])}{on}"


def pass_so_far(missing: Sequence[str]) -> str:
    """Return a pass with what is still to do, in words: never a bare pass."""
    tests = ", ".join(missing)
    return part("device.pass-so-far", so_far=SO_FAR, still_to_do=STILL_TO_DO, tests=tests)


def next_test(missing: Sequence[StillToDo]) -> NextTest | None:
    """Return the first of the tests that are still to do, and why."""
    if not missing:
        return None
    first = missing[0]
    why = part("device.required", code=first.code)
    return NextTest(test=first.words, why=why)
