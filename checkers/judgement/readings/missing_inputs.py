"""What decides how a reading is judged and was left out: it is asked for, never guessed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from checkers.domain.device.deciding_inputs import DECIDING, Decides
from checkers.domain.device.device import DeviceType
from checkers.domain.device.readings import Reading, Test, Waveform
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows, rows_in
from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.case import Case
from checkers.judgement.readings.installation_tests import tests_judged
from checkers.judgement.readings.missing_multiple import multiple_missing
from checkers.judgement.readings.verdict import Judged, undecided

LIMITS_OF: Mapping[str, tuple[str, ...]] = {
    Test.TRIP_TIME: ("trip-time", "no-trip-time", "operating-current"),
    Test.NO_TRIP: ("trip-time", "no-trip-time", "operating-current"),
    Test.RAMP: ("operating-current",),
}


def inputs_missing(reading: Reading, case: Case) -> list[Judged] | None:
    """Return a finding where an input that decides is left out, the first that is asked for."""
    for name, decides in DECIDING[reading.test].items():
        if LEFT_OUT[name](reading, case):
            by_limit = decides is Decides.BY_LIMIT
            if not by_limit or LIMIT_NEEDS[name](reading, case):
                return ASKED[name](reading, case)
    return None


def limit_rows(reading: Reading, case: Case) -> Iterator[Row]:
    """Yield the rows of standard and code that could limit a reading, as far as is known."""
    asked = {**case.device_asked, "waveform": reading.waveform}
    for measures in LIMITS_OF[reading.test]:
        yield from rows(measures, on=case.day, made_to=case.made_to, **asked)
    for test in tests_judged(case):
        if test.limits and test.test == reading.test:
            yield from rows_in(test.limits, on=case.day, **asked)


def _rating_needed(reading: Reading, case: Case) -> bool:
    named = reading.test != Test.RAMP and reading.multiple is not None
    return named or any(row.needs_rating for row in limit_rows(reading, case))


def _type_needed(reading: Reading, case: Case) -> bool:
    return any(row.when.only("type") is not None for row in limit_rows(reading, case))


def _ask_for_test(reading: Reading, case: Case) -> list[Judged]:
    del case
    measured = reading.measured
    if not (measured.is_number and measured.bare):
        return undecided("test-missing", reading)
    figure = format_quantity(measured.value, "").strip()
    return undecided("test-and-unit-missing", reading, {"figure": figure})


def _ask_for(code: str) -> Callable[[Reading, Case], list[Judged]]:
    return lambda reading, _: undecided(code, reading)


LEFT_OUT: Mapping[str, Callable[[Reading, Case], bool]] = {
    "test": lambda reading, _: reading.test == Test.UNKNOWN,
    "waveform": lambda reading, _: reading.waveform == Waveform.UNKNOWN,
    "level": lambda reading, _: reading.multiple is None and reading.current is None,
    "rating": lambda _, case: case.device.rated_residual_current is None,
    "type": lambda _, case: case.device.type == DeviceType.UNKNOWN,
}
LIMIT_NEEDS: Mapping[str, Callable[[Reading, Case], bool]] = {
    "rating": _rating_needed,
    "type": _type_needed,
}
ASKED: Mapping[str, Callable[[Reading, Case], list[Judged]]] = {
    "test": _ask_for_test,
    "waveform": _ask_for("waveform-missing"),
    "level": multiple_missing,
    "rating": _ask_for("rating-missing"),
    "type": _ask_for("type-missing"),
}
