"""Each limit that a test plan prints is the one by which a reading taken as planned is judged."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from itertools import product

import pytest

from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device, DeviceType, Form
from checkers.domain.device.readings import Circuit, Instrument, Reading, Waveform
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.plan.steps import Step, steps_of
from checkers.judgement.readings.any_reading import judge_reading
from checkers.wording.book import part

TODAY = date(2026, 11, 24)
DAYS = {"gb": (TODAY, date(2020, 6, 1), date(2015, 6, 1))}  # each under another set of tests
DELAYS: tuple[str | float, ...] = ("none", "G", "S", 30.0, 60.0, 500.0)
RATINGS = (6.0, 10.0, 20.0, 30.0, 100.0, 300.0, 500.0, 1_000.0, 3_000.0, None)
MADE_TO = {
    "": tuple(one.value for one in Form if one is not Form.MONITOR),
    "BS 4293": ("rccb", "rcbo"),
    "BS 7288": ("socket", "portable"),
    "AS/NZS 3190": ("rccb", "socket", "portable"),
    "IEC 61008-1, 0.25 A": ("rccb", "rcbo", "socket"),
    "IEC 62752": ("portable",),
}
MADE = tuple((form, made_to) for made_to, forms in MADE_TO.items() for form in forms)
WHOSE = {"installation rule": Judges.INSTALLATION_CODE, "device standard": Judges.DEVICE_STANDARD}
SHAPES = frozenset(Waveform)  # a mixture of frequencies is planned, and no reading of it is judged
UNITS = {"ms": 1.0, "s": 1000.0, "mA": 1.0, "A": 1000.0}
FIGURE = re.compile(r"(?P<figure>[\d.]+) (?P<unit>ms|s|mA|A)\b")
SURE = Instrument(time_uncertainty=0.01, current_uncertainty=0.001)


def limits_of(words: str) -> Iterator[tuple[Judges | None, float | None, float | None]]:
    """Yield whose each printed limit is, where that is said, with its least and its greatest."""
    for piece in words.split("; "):
        said = next((whose for whose in WHOSE if f"({whose})" in piece), None)
        found = [
            [float(one["figure"]) * UNITS[one["unit"]] for one in FIGURE.finditer(part)]
            for part in piece.split(" if ")
        ]
        ends = [figures for figures in found if figures]
        assert ends, words
        judges = None if said is None else WHOSE[said]
        if len(ends) > 1:  # one limit for each kind of device: all of them, and any of them
            yield judges, None, min(figures[-1] for figures in ends)
        elif len(ends[0]) > 1:
            yield judges, ends[0][0], ends[0][1]
        elif "≥" in piece:
            yield judges, ends[0][0], None
        else:
            yield judges, None, ends[0][0]


def findings(step: Step, value: str, case: Case) -> list[Finding]:
    """Return the findings on a reading taken as a step of the plan says."""
    current = step.current.value if step.current and step.multiple is None else None
    reading = Reading(value, step.test, step.multiple, current, step.waveform, step.phase)
    return [one.finding for one in judge_reading(reading, case)]


def outcomes(step: Step, value: str, case: Case, judges: Judges | None) -> set[Outcome]:
    """Return the outcomes of a reading by the rule that the plan names, or by any."""
    found = findings(step, value, case)
    return {one.outcome for one in found if judges in (None, one.judges)}


def check_limit(step: Step, case: Case) -> None:
    """Hold one step: just inside the printed limit passes, just outside it fails."""
    unit = "mA" if step.test == "ramp" else "ms"
    by = 0.01 if unit == "mA" else 1.0
    for judges, low, high in limits_of(step.limit):
        told = (case.device, case.code.key, case.day, step.test, step.limit, judges)
        if high is None:
            assert low is not None
            inside = Outcome.PASS if step.test == "ramp" else Outcome.CANNOT_SAY
            assert inside in outcomes(step, f"{low + by} {unit}", case, judges), told
        else:
            assert Outcome.PASS in outcomes(step, f"{high - by} {unit}", case, judges), told
            if " if " not in step.limit:
                assert Outcome.FAIL in outcomes(step, f"{high + by} {unit}", case, judges), told
        if low is not None:
            assert Outcome.FAIL in outcomes(step, f"{low - by} {unit}", case, judges), told


def check_hold(step: Step, case: Case) -> None:
    """Hold a no-trip step: held passes, tripped fails, or nothing is known of either."""
    held, tripped = outcomes(step, "no trip", case, None), outcomes(step, "tripped", case, None)

    assert (held, tripped) == ({Outcome.PASS}, {Outcome.FAIL}), (case.device, case.code.key, step)


CHECKS = {"trip-time": check_limit, "ramp": check_limit, "no-trip": check_hold}


def check_plan(case: Case) -> int:
    """Hold every step of a plan that has a limit; returns how many there were."""
    checked, not_known = 0, part("plan.maker-states-it")
    for step in steps_of(case):
        if step.limit == not_known or step.test not in CHECKS or step.waveform not in SHAPES:
            continue
        CHECKS[step.test](step, case)
        checked += 1
    return checked


def cases(code: str, thin: int = 1) -> Iterator[Case]:
    """Yield devices of every form, type, rating and delay; one in so many of them."""
    types = [one.value for one in DeviceType]
    every = product(DAYS.get(code, (TODAY,)), MADE, types, RATINGS, DELAYS)
    for number, (day, (form, made_to), kind, rated, delay) in enumerate(every):
        if number % thin == 0:
            device = Device(kind, rated, delay, form, made_to)
            yield Case(device, Circuit(loads="off"), SURE, CODES[code], day)


@pytest.mark.parametrize("code", CODES)
def test_what_a_plan_prints_is_what_a_reading_is_judged_by(code: str) -> None:
    """Whatever code, form, type, rating, delay and standard: plan and verdict are one."""
    assert sum(check_plan(case) for case in cases(code, thin=29)) > 0


@pytest.mark.slow
@pytest.mark.parametrize("code", CODES)
def test_so_it_is_for_every_device(code: str) -> None:
    """The same, and none left out."""
    assert sum(check_plan(case) for case in cases(code)) > 0
