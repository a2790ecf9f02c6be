"""What stops a reading before it is compared: lists by kind of test, and by what is asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from checkers.domain.causes import ACTIONS
from checkers.domain.device.readings import EXPECTED, Reading, Test
from checkers.domain.quantities.measured_value import Said
from checkers.domain.sources.judging import JUDGING
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import Must
from checkers.judgement.readings.missing_inputs import inputs_missing
from checkers.judgement.readings.verdict import Judged, undecided
from checkers.wording.book import part

Guard = Callable[[Reading, Case], list[Judged] | None]
NO_RESULT: Mapping[Said, str] = {
    Said.UNCLEAR: "result-unclear",
    Said.NO_RESULT: "test-not-completed",
    Said.NOT_TESTED: "not-tested",
}


def stopped(reading: Reading, case: Case) -> list[Judged] | None:
    """Return the finding of the first guard that stops a reading, or None where it may pass."""
    found = (guard(reading, case) for guard in GUARDS[reading.test])
    return next((one for one in found if one), None)


def stopped_at(must: Must, reading: Reading, case: Case) -> list[Judged] | None:
    """Return the finding of the first guard of a demand that stops a reading, or None.

    What a test is called does not tell what the device must do at its current: a no-trip test
    at a current at which it must trip is a time all the same.
    """
    found = (guard(reading, case) for guard in GUARDS_OF_DEMANDS[must])
    return next((one for one in found if one), None)


def only_warns(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop every reading of a device that does not trip."""
    if not case.only_warns:
        return None
    return undecided("device-only-warns", reading)


def not_a_result(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop what is no result of a test, or could mean two things."""
    del case
    measured = reading.measured
    code = NO_RESULT.get(measured.said)
    if code is None:
        return None
    facts = {"typed": measured.typed.strip(), "question": measured.question}
    return undecided(code, reading, facts)


def word_of_a_button(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a word fit for a test button where a figure is wanted."""
    del case
    measured = reading.measured
    if measured.said not in (Said.OPERATES, Said.DOES_NOT_OPERATE):
        return None
    return undecided("word-without-figure", reading, {"typed": measured.typed.strip()})


def wrong_unit(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a current where a time is wanted, and a time where a current is."""
    del case
    measured, expected = reading.measured, EXPECTED.get(reading.test)
    wanted = {"trip_time": "ms", "trip_current": "mA"}.get(expected or "")
    if not measured.is_number or wanted is None or measured.unit == wanted:
        return None
    kind = part("reading.a-time" if measured.unit == "ms" else "reading.a-current")
    asked = part("reading.trip-time-asked" if wanted == "ms" else "reading.trip-current-asked")
    return undecided("wrong-unit", reading, {"kind": kind, "asked": asked})


def timer_ran_on(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a time without end where the device was seen to open."""
    ran_on = reading.measured.said in (Said.MORE_THAN, Said.NO_TRIP)
    if not (ran_on and case.circuit.seen_to_open):
        return None
    return undecided("timer-ran-on", reading, do_next=ACTIONS["reconnect"])


def trip_not_seen(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a trip that the instrument shows where the device was seen to stay."""
    shown = reading.measured.said in (Said.FIGURE, Said.LESS_THAN, Said.TRIPPED)
    if not shown or case.circuit.seen_to_open is not False:
        return None
    return undecided("trip-not-seen", reading)


def too_quick(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a time shorter than contacts need to open."""
    del case
    measured = reading.measured
    quickest = JUDGING.quickest_opening
    figure = measured.said is Said.FIGURE and measured.value < quickest
    bound = measured.said is Said.LESS_THAN and measured.value <= quickest
    if not (figure or bound):
        return None
    return undecided("too-quick", reading)


READABLE: tuple[Guard, ...] = (only_warns, not_a_result)
MEASURED = (*READABLE, word_of_a_button, wrong_unit, inputs_missing)
GUARDS: Mapping[str, tuple[Guard, ...]] = {
    Test.TRIP_TIME: (*MEASURED, timer_ran_on, trip_not_seen, too_quick),
    Test.NO_TRIP: (*MEASURED, trip_not_seen),
    Test.RAMP: (*MEASURED, trip_not_seen),
    Test.BUTTON: READABLE,
    Test.UNKNOWN: (only_warns, inputs_missing),
}
TIMED: tuple[Guard, ...] = (timer_ran_on, too_quick)
GUARDS_OF_DEMANDS: Mapping[Must, tuple[Guard, ...]] = {
    Must.HOLD: (),
    Must.EITHER: TIMED,
    Must.TRIP: TIMED,
    Must.NOT_KNOWN: TIMED,
}
