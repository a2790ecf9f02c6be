"""What stops a reading before it is compared with any limit: one list for each kind of test."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from checkers.domain.causes import ACTIONS
from checkers.domain.device.readings import EXPECTED, Reading, Test
from checkers.domain.quantities.measured_value import Said
from checkers.domain.sources.judging import JUDGING
from checkers.judgement.case import Case
from checkers.judgement.readings.missing_inputs import inputs_missing
from checkers.judgement.readings.verdict import Judged, undecided

Guard = Callable[[Reading, Case], list[Judged] | None]


def stopped(reading: Reading, case: Case) -> list[Judged] | None:
    """Return the finding of the first guard that stops a reading, or None where it may pass."""
    found = (guard(reading, case) for guard in GUARDS[reading.test])
    return next((one for one in found if one), None)


def only_warns(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop every reading of a device that does not trip."""
    if not case.only_warns:
        return None
    return undecided(
        reading,
        "A monitor warns and does not trip: no trip limit applies, and it does not protect.",
        "Find the device that disconnects, and test that one.",
    )


def not_a_result(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop what is no result of a test, or could mean two things."""
    del case
    measured = reading.measured
    if measured.said is Said.UNCLEAR:
        return undecided(reading, measured.question, "Write the one figure of this test.")
    if measured.said is Said.NO_RESULT:
        return undecided(
            reading,
            f"“{measured.typed.strip()}” means that the test was not completed: no pass, no fail.",
            "Take the loads off, set the device's own rating, and repeat the test.",
        )
    if measured.said is Said.NOT_TESTED:
        return undecided(
            reading,
            f"“{measured.typed.strip()}” is read as: not tested. It shows nothing.",
            "Make the test; if it was made and the device did not trip, write “no trip”.",
        )
    return None


def word_of_a_button(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a word fit for a test button where a figure is wanted."""
    del case
    measured = reading.measured
    if measured.said not in (Said.OPERATES, Said.DOES_NOT_OPERATE):
        return None
    return undecided(
        reading,
        f"“{measured.typed.strip()}” gives no figure, so it shows nothing against a limit.",
        "Write what the instrument showed.",
    )


def wrong_unit(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a current where a time is wanted, and a time where a current is."""
    del case
    measured, expected = reading.measured, EXPECTED.get(reading.test)
    wanted = {"trip_time": "ms", "trip_current": "mA"}.get(expected or "")
    if not measured.is_number or wanted is None or measured.unit == wanted:
        return None
    kind = "a time" if measured.unit == "ms" else "a current"
    asked = "a trip time, in ms" if wanted == "ms" else "a trip current, in mA"
    return undecided(
        reading,
        f"{measured} is {kind}, but this test gives {asked}: the one does not become the other.",
        "Say which test the figure belongs to, or correct the unit.",
    )


def timer_ran_on(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a time without end where the device was seen to open."""
    ran_on = reading.measured.said in (Said.MORE_THAN, Said.NO_TRIP)
    if not (ran_on and case.circuit.seen_to_open):
        return None
    return undecided(
        reading,
        "The device was seen to open while the instrument's timer ran on: "
        "a measuring artefact, no failure and no pass.",
        ACTIONS["reconnect"],
    )


def trip_not_seen(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a trip that the instrument shows where the device was seen to stay."""
    shown = reading.measured.said in (Said.FIGURE, Said.LESS_THAN, Said.TRIPPED)
    if not shown or case.circuit.seen_to_open is not False:
        return None
    return undecided(
        reading,
        "The instrument shows a trip, but the device was not seen to open: "
        "something else may have broken the circuit.",
        "Find out which device opened, and repeat at this one.",
    )


def too_quick(reading: Reading, case: Case) -> list[Judged] | None:
    """Stop a time shorter than contacts need to open."""
    del case
    measured = reading.measured
    quickest = JUDGING.quickest_opening
    figure = measured.said is Said.FIGURE and measured.value < quickest
    bound = measured.said is Said.LESS_THAN and measured.value <= quickest
    if not (figure or bound):
        return None
    return undecided(
        reading,
        f"{measured} is quicker than contacts can open: it may be a slip of the unit or of a lead.",
        "Check the unit, and repeat.",
    )


READABLE: tuple[Guard, ...] = (only_warns, not_a_result)
MEASURED = (*READABLE, word_of_a_button, wrong_unit, inputs_missing)
GUARDS: Mapping[str, tuple[Guard, ...]] = {
    Test.TRIP_TIME: (*MEASURED, timer_ran_on, trip_not_seen, too_quick),
    Test.NO_TRIP: (*MEASURED, trip_not_seen),
    Test.RAMP: (*MEASURED, trip_not_seen),
    Test.BUTTON: READABLE,
    Test.UNKNOWN: (only_warns, inputs_missing),
}
