"""The next test: the one whose outcome is expected to tell most about the cause."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, log2

from checkers.domain.causes import REMAINDER
from checkers.domain.verdicts import NextTest
from checkers.judgement.case import Case
from checkers.judgement.inference.expected import percent, weights_of
from checkers.judgement.inference.next_step.candidate_steps import candidate_steps
from checkers.judgement.inference.next_step.step import NextStep
from checkers.judgement.inference.weighing.hypotheses import hypothesis
from checkers.judgement.inference.weighing.posterior import Evidence, Weighed
from checkers.judgement.inference.weighing.samples import FEW, cloud
from checkers.physics.condition.state import Possible
from checkers.wording.book import part

WORTH_ASKING = 0.05  # bits
COUNTS = 0.02  # a cause less likely than this is left out of the comparison
ROUGH, SAMPLE = 4, 24  # members that stand for a cause: to find what is worth a look, and then
WORTH_A_LOOK = 0.75  # what roughly tells less than so much of the best is not looked at again
CLEARLY = 0.8  # an outcome that a cause leads to, and good order does not
Sample = Sequence[tuple[Possible, int]]
ABOUT_AS_MUCH = 0.95  # samples scatter so much; of two that tell alike, the first listed is easier


@dataclass(frozen=True, slots=True)
class Asked:
    """A step with what it would tell: bits, and the probability of each outcome and cause."""

    step: NextStep
    information: float
    joint: tuple[tuple[float, ...], ...]
    shares: tuple[float, ...]
    causes: tuple[str, ...]


def next_test(
    case: Case, evidence: Evidence, causes: Sequence[Weighed], *, settled: bool = True
) -> NextTest | None:
    """Return the test with the greatest expected information, or None where none tells much.

    Inputs: the case, the evidence, the causes with their probabilities; whether it is enough
    to know as much as that: where something fails, the likeliest cause is confirmed.
    Assumptions: each likely cause is represented by a sample of its possible states,
    drawn evenly by how well they explain the readings.
    """
    could = candidate_steps(case, evidence)
    best = most_telling(could, evidence, causes, settled=settled)
    if not settled and (best is None or best.information < WORTH_ASKING):
        look = _confirming(could, evidence, causes[0])
        if look is not None:
            return NextTest(look.words, part("inference.confirms"))
    return None if best is None else _worded(best)


def _confirming(could: Sequence[NextStep], evidence: Evidence, cause: Weighed) -> NextStep | None:
    """Return what to look at that is out of the ordinary under a cause alone, if anything."""
    sample = _sample(cause, evidence, SAMPLE)
    sound = [(one, 1) for one in cloud(REMAINDER, evidence.known, FEW)[:SAMPLE]]
    for one in could:
        if not one.look or one.look == "watch":
            continue
        under, otherwise = (_outcomes(one, members, 1.0)[0] for members in (sample, sound))
        if under > CLEARLY > 1.0 - CLEARLY > otherwise:
            return one
    return None


def most_telling(
    could: Sequence[NextStep],
    evidence: Evidence,
    causes: Sequence[Weighed],
    *,
    settled: bool = True,
) -> Asked | None:
    """Return what tells most of all that could be done, or None where none tells much.

    Inputs: what could be done, the easier first; the evidence; the causes, weighed; whether
    little is enough: else the two likeliest causes are told apart all the same.
    """
    counted = [one for one in causes if one.probability >= COUNTS]
    if not settled and len(counted) == 1:
        counted = list(causes[:2])
    asked = _asked(could, counted, evidence, ROUGH)
    worth = WORTH_A_LOOK * max((one.information for one in asked), default=0.0)
    likely = [one.step for one in asked if one.information >= worth]
    asked = _asked(likely, counted, evidence, SAMPLE)
    most = max((one.information for one in asked), default=0.0)
    if most < WORTH_ASKING and (settled or most <= 0.0):
        return None
    return next(one for one in asked if one.information >= ABOUT_AS_MUCH * most)


def _asked(
    could: Sequence[NextStep], causes: Sequence[Weighed], evidence: Evidence, size: int
) -> list[Asked]:
    """Return what each step would tell, with samples of a size."""
    samples = [_sample(one, evidence, size) for one in causes]
    shares = _normal([one.probability for one in causes])
    codes = tuple(one.code for one in causes)
    return [_ask(one, samples, shares, codes) for one in could]


def _sample(cause: Weighed, evidence: Evidence, size: int) -> Sample:
    """Return members of a cause's cloud, with how many of the sample each stands for."""
    members = cloud(cause.code, evidence.known, cause.count, evidence.own_of(cause.code))
    chosen, reached, taken = [], 0.0, 0
    for member, weight in zip(members, weights_of(cause.totals), strict=True):
        reached += weight
        times = max(0, min(size, ceil(reached * size - 0.5)) - taken)
        if times:
            chosen.append((member, times))
            taken += times
    return chosen or [(members[0], size)]


def _ask(
    step: NextStep,
    samples: Sequence[Sample],
    shares: Sequence[float],
    codes: tuple[str, ...],
) -> Asked:
    joint = [_outcomes(step, one, share) for one, share in zip(samples, shares, strict=True)]
    by_outcome = tuple(zip(*joint, strict=True))
    information = _information(by_outcome, shares)
    return Asked(step, information, by_outcome, tuple(shares), codes)


def _outcomes(step: NextStep, sample: Sample, share: float) -> tuple[float, ...]:
    """Return the probability of each outcome together with a cause of this share."""
    found = [0.0] * len(step.outcomes)
    for member, times in sample:
        for at, chance in enumerate(step.chances(member)):
            found[at] += times * chance
    whole = sum(times for _, times in sample)
    return tuple(share * one / whole for one in found)


def _information(joint: Sequence[Sequence[float]], shares: Sequence[float]) -> float:
    """Return the mutual information [bits] of outcome and cause."""
    return sum(
        both * log2(both / (sum(row) * share))
        for row in joint
        for both, share in zip(row, shares, strict=True)
        if both > 0.0
    )


def _normal(values: Sequence[float]) -> list[float]:
    whole = sum(values)
    return [one / whole for one in values]


def _worded(asked: Asked) -> NextTest:
    still_open = -sum(share * log2(share) for share in asked.shares if share > 0.0)
    why = part("inference.tells-most", share=percent(asked.information / still_open))
    told = [
        _meaning(words, row, asked.causes)
        for words, row in zip(asked.step.outcomes, asked.joint, strict=True)
        if sum(row) >= COUNTS
    ]
    return NextTest(asked.step.words, why, tuple(told))


def _meaning(words: str, row: Sequence[float], causes: Sequence[str]) -> str:
    whole = sum(row)
    likeliest = max(range(len(row)), key=lambda at: row[at])
    return part(
        "inference.outcome-means",
        outcome=words,
        chance=percent(whole),
        cause=hypothesis(causes[likeliest]).name,
        cause_chance=percent(row[likeliest] / whole),
    )
