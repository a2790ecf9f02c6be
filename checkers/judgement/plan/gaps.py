"""What a test plan leaves open, and what to find out first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import DeviceType
from checkers.domain.device.readings import Test
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.plan.steps import Step

HOLDS = "what the plan holds"
NOTHING_JUDGED = "Nothing is judged yet: hold each reading to the limit of its step."


def gaps(case: Case, steps: Sequence[Step]) -> list[Finding]:
    """Return what a plan does not decide; the first finding says what it holds."""
    held = replace(_open(f"{_held(steps)} {NOTHING_JUDGED}"), about=HOLDS)
    return [held, *_rating(case), *_type(case), *_without_limit(steps), *_without_dc(case, steps)]


def _held(steps: Sequence[Step]) -> str:
    """Return what a plan holds: 14 steps, 3 of them required here. 4 with the loads on, 10 off."""
    required = sum(one.standing == "required" for one in steps)
    loads_on = sum(one.loads == "on" for one in steps)
    share = f"{required} of them" if required else "none known to be"
    loads = f"{loads_on} with the loads on, {len(steps) - loads_on} off"
    return f"{len(steps)} steps, {share} required here. {loads}."


def _rating(case: Case) -> list[Finding]:
    device = case.device
    if device.rated_residual_current is not None or not device.has(Ability.RATING_PRINTED):
        return []
    says = "The rated residual current is not given: no test current can be named without it."
    return [_open(says, "Read IΔn on the device first.", "device.rated_residual_current")]


def _type(case: Case) -> list[Finding]:
    if case.device.type != DeviceType.UNKNOWN or not case.device.has(Ability.HAS_TYPE):
        return []
    says = "The type is not given: the tests with half wave and with smooth DC are left out."
    return [_open(says, "Read the type symbol on the device first.", "device.type")]


def _without_limit(steps: Sequence[Step]) -> list[Finding]:
    timed = [one for one in steps if one.test == Test.TRIP_TIME]
    if all("≤" in one.limit or " to " in one.limit for one in timed):
        return []
    says = (
        "For some of the timed tests no greatest time is known with this delay and rating: "
        "the maker of the device states it."
    )
    do_next = "Look up the break times in the maker's data, and check delay and rating."
    return [_open(says, do_next, "device.delay")]


def _without_dc(case: Case, steps: Sequence[Step]) -> list[Finding]:
    planned = any(one.waveform == "smooth-dc" for one in steps)
    rated = case.device.rated_residual_current is not None
    if planned or not case.device.senses_smooth_dc or not rated:
        return []
    says = "No limits on smooth DC are carried for a type B in this form: its maker states them."
    return [_open(says, "Ask the maker for the operating current on smooth DC.", "device.form")]


def _open(says: str, do_next: str = "", field: str = "") -> Finding:
    return Finding(
        about="test plan",
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.FUNCTION,
        do_next=do_next,
        field=field,
    )
