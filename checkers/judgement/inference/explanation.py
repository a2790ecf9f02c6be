"""From a case and its readings to causes, weighed, and the evidence they rest on.

The readings are judged first, by the very code of `readings`: what fails is out of order,
whatever cause comes to mind.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import DeviceType
from checkers.domain.device.placed_readings import PlacedReading
from checkers.domain.limits.tables import rows_in
from checkers.domain.verdicts import Finding, Outcome
from checkers.judgement.case import Case
from checkers.judgement.device.still_to_test import still_to_do
from checkers.judgement.device.whole_verdict import judge_each, judge_whole
from checkers.judgement.inference.standing import Standing, allowed, standing_of
from checkers.judgement.inference.weighing.attempts import LeftOut, noted_tests
from checkers.judgement.inference.weighing.inspection import Inspected, settled
from checkers.judgement.inference.weighing.posterior import Evidence, Weighed, take_apart, weigh
from checkers.judgement.inference.weighing.priors import prior_shares
from checkers.physics.condition.knowledge import Known

DC_TOLERATED = "iec-60364-5-53/smooth-dc-tolerated"


@dataclass(frozen=True, slots=True)
class Explained:
    """The causes, the most likely first; the evidence; the readings that could not be used.

    `standing` is how the device stands by its limits.
    """

    causes: tuple[Weighed, ...]
    evidence: Evidence
    left_out: tuple[LeftOut, ...]
    standing: Standing

    def chance_of(self, *codes: str) -> float:
        """Return how likely it is that one of these causes is the true one."""
        return sum(one.probability for one in self.causes if one.code in codes)


def why_not(case: Case) -> str:
    """Return the code of why this device cannot be explained, or nothing where it can."""
    if not case.device.has(Ability.EXPLAINED):
        return "inference.kind-not-weighed"
    if case.device.rated_residual_current is None:
        return "inference.rating-missing"
    return ""


def explain(  # noqa: PLR0913  # all that may be known beside the readings
    readings: Sequence[PlacedReading],
    case: Case,
    supply: str = "unknown",
    looked: tuple[tuple[str, bool], ...] = (),
    opened: Sequence[bool | None] = (),
    *,
    findings: Sequence[Finding] | None = None,
    inspected: Inspected | None = None,
) -> Explained:
    """Return the causes of some readings, weighed.

    Inputs: the readings in the order in which they were taken; the case, with a rating;
    the supply during the tests; what was looked at, and whether it was strange; for each
    reading, whether this device was seen to open, where it was watched; what `readings`
    finds, where more was known to it than the case says; what inspection settles, if it is known.
    Assumptions: one cause at a time, from the list in causes.toml; the response model.
    """
    each = judge_each(readings, case)
    found = judge_whole(readings, case, each) if findings is None else findings
    standing = standing_of(found, still_to_do(readings, case))
    fails = [
        bool(standing.failing) and any(one.finding.outcome is Outcome.FAIL for one in judged)
        for judged in each
    ]
    noted, left_out = noted_tests(readings, case, opened, fails)
    seen, known = case.circuit.seen_to_open, known_of(case, supply)
    own = None if inspected is None else inspected.lots
    evidence = Evidence(noted, known, seen, looked, wrong_apart=True, own_lots=own)
    on = any(one.attempt.loads != "off" for one in noted) or case.circuit.loads != "off"
    priors = prior_shares(evidence.known, _tolerated_dc(case), loads_may_be_on=on)
    possible = allowed(priors, standing, len(noted))
    possible = possible if inspected is None else settled(possible, inspected)
    causes = tuple(take_apart(one) for one in weigh(evidence, possible))
    return Explained(causes, evidence, left_out, standing)


def known_of(case: Case, supply: str = "unknown") -> Known:
    """Return what is known of a case before its readings."""
    device, circuit = case.device, case.circuit
    return Known(
        rated=device.rated_residual_current or 0.0,
        type=device.type,
        delay=device.delay_class,
        set_delay=device.set_delay,
        loads=circuit.loads,
        dc=circuit.dc_residual,
        leakage=circuit.standing_leakage,
        system=circuit.system,
        supply=supply,
    )


def _tolerated_dc(case: Case) -> float:
    """Return the smooth DC [mA] the type bears; for an unknown type, what type A does."""
    device = case.device
    kind = DeviceType.A.value if device.type == DeviceType.UNKNOWN else device.type
    table = case.code.tables.get("standing-dc", DC_TOLERATED)
    found = rows_in(table, on=case.day, type=kind, rated=device.rated_residual_current)
    return (found[0].at_most(device.rated_residual_current) if found else None) or 0.0
