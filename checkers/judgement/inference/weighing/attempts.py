"""Readings as noted, turned into tests whose outcome the response model can predict."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import zip_longest

from checkers.domain.device.placed_readings import PlacedReading
from checkers.domain.device.readings import Test, Waveform
from checkers.domain.errors import quoted
from checkers.domain.quantities.measured_value import SHOWS_NOTHING, Measured, Said
from checkers.domain.sources.judging import JUDGING
from checkers.judgement.case import Case
from checkers.judgement.limits.test_current import level_of, step_factor
from checkers.physics.response.attempt import Attempt
from checkers.wording.finding import NO_FACTS
from checkers.wording.reading_names import name_of, spoken

SHOWS_OPERATION = frozenset({Said.FIGURE, Said.LESS_THAN, Said.TRIPPED, Said.OPERATES})
WINDOW, SELECTIVE_WINDOW = 300.0, 500.0
RAMP_BEYOND = 1.1  # a ramp ends a little above the current at which the device must trip
UNITS = {Test.RAMP: "mA", Test.TRIP_TIME: "ms", Test.NO_TRIP: "ms"}


@dataclass(frozen=True, slots=True)
class Noted:
    """A reading that can be used: its name, what was done, and what was shown.

    `opened` is whether this device was seen to open in this very test, where it was watched;
    `fails` whether the reading fails a limit.
    """

    name: str
    attempt: Attempt
    measured: Measured
    opened: bool | None = None
    fails: bool = False

    @property
    def shows_operation(self) -> bool:
        """Whether the instrument shows that something opened."""
        return self.measured.said in SHOWS_OPERATION


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A reading that cannot be used, and the code and facts of what stands against it."""

    name: str
    code: str
    facts: Mapping[str, object] = NO_FACTS


def noted_tests(
    readings: Sequence[PlacedReading],
    case: Case,
    opened: Sequence[bool | None] = (),
    fails: Sequence[bool] = (),
) -> tuple[tuple[Noted, ...], tuple[LeftOut, ...]]:
    """Return the readings that can be used, in their order, and those that cannot.

    Inputs: the readings; the case; for each reading, whether this device was seen to open,
    and whether it fails a limit.
    """
    used: list[Noted] = []
    left_out: list[LeftOut] = []
    for reading, seen, failed in zip_longest(readings, opened, fails):
        name = spoken(name_of(reading))
        problem = _problem(name, reading, case)
        if problem:
            left_out.append(problem)
        else:
            first = not any(one.attempt.tries_the_mechanism for one in used)
            attempt = attempt_of(reading, case, first=first)
            used.append(Noted(name, attempt, reading.measured, seen, fails=bool(failed)))
    return tuple(used), tuple(left_out)


def attempt_of(reading: PlacedReading, case: Case, *, first: bool) -> Attempt:
    """Return the test behind a reading; a waveform that is not given is taken as AC."""
    rated = case.device.rated_residual_current or 0.0
    waveform = Waveform.AC.value if reading.waveform == Waveform.UNKNOWN else reading.waveform
    given = case.instrument.time_uncertainty
    return Attempt(
        test=_test(reading),
        rated=rated,
        current=_current(reading, case, rated, waveform),
        waveform=waveform,
        start=reading.phase,
        loads=case.circuit.loads if reading.loads == "as-circuit" else reading.loads,
        place=reading.place,
        first=first,
        window=_window(reading, case),
        current_uncertainty=case.current_uncertainty(rated) / 2.0,
        time_uncertainty=None if given is None else given / 2.0,
    )


def _problem(name: str, reading: PlacedReading, case: Case) -> LeftOut | None:
    measured, test = reading.measured, _test(reading)
    if measured.said in SHOWS_NOTHING:
        return _no_result(name, measured)
    if test == Test.UNKNOWN:
        return LeftOut(name, "inference.left-out-test-missing")
    if measured.is_number and test in UNITS and measured.unit != UNITS[Test(test)]:
        return LeftOut(name, "inference.left-out-wrong-unit", {"measured": measured})
    if test == Test.TRIP_TIME and level_of(reading, case) is None:
        return LeftOut(name, "inference.left-out-multiple-missing")
    return None


def _no_result(name: str, measured: Measured) -> LeftOut:
    if measured.question:
        return LeftOut(name, "inference.left-out-unclear", {"question": measured.question})
    return LeftOut(name, "inference.left-out-no-result", {"typed": quoted(measured.typed.strip())})


def _test(reading: PlacedReading) -> str:
    measured = reading.measured
    in_current = measured.is_number and measured.unit == "mA" and not measured.bare
    return Test.RAMP.value if reading.test == Test.UNKNOWN and in_current else reading.test


def _current(reading: PlacedReading, case: Case, rated: float, waveform: str) -> float:
    test = _test(reading)
    if test == Test.BUTTON:
        return 0.0
    if test == Test.RAMP:
        return RAMP_BEYOND * rated * step_factor(case, waveform)
    level = level_of(reading, case)
    return 0.5 * rated if level is None else level.current


def _window(reading: PlacedReading, case: Case) -> float:
    if reading.test == Test.NO_TRIP:
        return JUDGING.no_trip_lasts
    device = case.device
    if device.set_delay is not None:
        return SELECTIVE_WINDOW + 2.0 * device.set_delay
    return SELECTIVE_WINDOW if device.delay_class == "S" else WINDOW
