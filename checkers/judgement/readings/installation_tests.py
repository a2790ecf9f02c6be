"""The tests an installation code speaks of, and the limits it sets for them."""

from __future__ import annotations

import dataclasses
from math import isclose
from typing import TypeVar

from checkers.domain.codes.registry import CodeTest
from checkers.domain.device.readings import Reading, Test
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.tables import rows_in
from checkers.domain.verdicts import Judges
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import band_of, operating_band
from checkers.judgement.limits.test_current import TestCurrent
from checkers.judgement.limits.time_limits import BindingTimes, binding_times, product_times

Asked = TypeVar("Asked", Limit, BindingTimes)
ASKED_FOR = ("required", "advised")
MAKERS_CHOICE = frozenset({"five-times", "quarter-ampere"})


def tests_asked_for(case: Case) -> tuple[CodeTest, ...]:
    """Return the tests of this device that the code requires or advises on that day."""
    return tuple(test for test in tests_of(case) if test.standing in ASKED_FOR)


def tests_of(case: Case) -> tuple[CodeTest, ...]:
    """Return the tests that the code speaks of for this device on that day."""
    device = case.device_asked
    known = {name: device[name] for name in ("type", "form", "delay", "rated")}
    return tuple(test for test in case.code.tests_on(case.day) if test.concerns(**known))


def tests_judged(case: Case) -> tuple[CodeTest, ...]:
    """Return the tests of this device that the code judges."""
    return tuple(test for test in tests_of(case) if is_judged(test))


def is_judged(test: CodeTest) -> bool:
    """Tell whether a code judges a test: it asks for it, or sets a limit of its own for it."""
    return test.standing in ASKED_FOR or bool(test.limits and test.standing != "not-required")


def answers_test(reading: Reading, test: CodeTest, level: TestCurrent | None) -> bool:
    """Tell whether a reading was taken in the way a test of the code asks for."""
    if reading.test != test.test or (test.waveform and reading.waveform != test.waveform):
        return False
    if test.multiple is None:
        return True
    nominal = level.nominal if level else reading.multiple
    return nominal is not None and isclose(nominal, test.multiple, rel_tol=1e-6)


def installation_limits(
    reading: Reading, case: Case, level: TestCurrent
) -> tuple[BindingTimes, ...]:
    """Return the code's limits for a trip time: none, one, or one for each kind it could be.

    More than one comes back where the limit depends on a kind of device, such as
    type I, that was not said.
    """
    for test in tests_judged(case):
        if answers_test(reading, test, level):
            times = _times(test, reading, case, level)
            found = [_of_code(one, test) for one in times if one.most.fails is not None]
            if found:
                return tuple(found)
    return ()


def installation_test(reading: Reading, case: Case, level: TestCurrent | None) -> CodeTest | None:
    """Return the test of the code that a reading answers, or None."""
    answered = (test for test in tests_judged(case) if answers_test(reading, test, level))
    return next(answered, None)


def installation_band(reading: Reading, case: Case) -> Limit | None:
    """Return the code's limit for a ramp, or None where it does not ask for one."""
    for test in tests_judged(case):
        if test.test == Test.RAMP and answers_test(reading, test, None):
            return _band(test, reading, case)
    return None


def _times(
    test: CodeTest, reading: Reading, case: Case, level: TestCurrent
) -> tuple[BindingTimes, ...]:
    if not test.limits:
        return (product_times(case, reading.waveform, level.current),)
    asked = case.device_asked | {"waveform": reading.waveform}
    found = rows_in(test.limits, on=case.day, **asked)
    kinds = sorted(
        {kind for row in found for kind in row.when.only("option") or ()} - MAKERS_CHOICE
    )
    asked_by_kind = [rows_in(test.limits, on=case.day, **asked, option=kind) for kind in kinds]
    return tuple(binding_times(rows, case, level.current) for rows in asked_by_kind or [found])


def _of_code(limit: Asked, test: CodeTest) -> Asked:
    """Return what a test of the code asks for as the code's own."""
    return dataclasses.replace(limit, judges=Judges.INSTALLATION_CODE, asked_by=(test.citation,))


def _band(test: CodeTest, reading: Reading, case: Case) -> Limit | None:
    asked = case.device_asked | {"waveform": reading.waveform}
    found = rows_in(test.limits, on=case.day, **asked) if test.limits else ()
    band = band_of(found[0], case) if found else operating_band(case, reading.waveform)
    return None if band is None else _of_code(band, test)
