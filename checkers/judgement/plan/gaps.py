"""What a test plan leaves open, and what to find out first."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import DeviceType
from checkers.domain.device.readings import Test, Waveform
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.plan.steps import Step
from checkers.wording.finding import NO_FACTS, finding

REQUIRED, NONE_REQUIRED = "plan.what-it-holds", "plan.what-it-holds-none-required"
HOLDS = frozenset({REQUIRED, NONE_REQUIRED})


def gaps(case: Case, steps: Sequence[Step]) -> list[Finding]:
    """Return what a plan does not decide; the first finding says what it holds."""
    return [
        _held(steps),
        *_rating(case),
        *_type(case),
        *_without_limit(steps),
        *_without_dc(case, steps),
    ]


def _held(steps: Sequence[Step]) -> Finding:
    """Return what a plan holds: 14 steps, 3 of them required here. 4 with the loads on, 10 off."""
    required = sum(one.standing == "required" for one in steps)
    on = sum(one.loads == "on" for one in steps)
    facts = {
        "steps": len(steps),
        "required": required,
        "loads_on": on,
        "loads_off": len(steps) - on,
    }
    return _open(REQUIRED if required else NONE_REQUIRED, facts=facts)


def _rating(case: Case) -> list[Finding]:
    device = case.device
    if device.rated_residual_current is not None or not device.has(Ability.RATING_PRINTED):
        return []
    return [_open("plan.rating-missing", "device.rated_residual_current")]


def _type(case: Case) -> list[Finding]:
    if case.device.type != DeviceType.UNKNOWN or not case.device.has(Ability.HAS_TYPE):
        return []
    return [_open("plan.type-missing", "device.type")]


def _without_limit(steps: Sequence[Step]) -> list[Finding]:
    timed = [one for one in steps if one.test == Test.TRIP_TIME]
    if all(any(limit.at_most is not None for limit in one.limits) for one in timed):
        return []
    return [_open("plan.greatest-time-not-known", "device.delay")]


def _without_dc(case: Case, steps: Sequence[Step]) -> list[Finding]:
    planned = any(one.waveform == Waveform.SMOOTH_DC for one in steps)
    rated = case.device.rated_residual_current is not None
    if planned or not case.device.senses_smooth_dc or not rated:
        return []
    return [_open("plan.no-limits-on-smooth-dc", "device.form")]


def _open(code: str, field: str = "", facts: Mapping[str, object] = NO_FACTS) -> Finding:
    return finding(code, Outcome.CANNOT_SAY, Judges.FUNCTION, facts, field=field)
