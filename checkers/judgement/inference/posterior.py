"""How likely each cause is once the readings are known (Bayes' rule)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import exp, log
from operator import mul

from checkers.judgement.inference.clouds import FEW, MANY, cloud, predicted
from checkers.judgement.inference.likelihood import log_likelihoods, log_likelihoods_seen
from checkers.judgement.inference.looks import log_likelihoods_looked
from checkers.judgement.inference.noted import SHOWS_OPERATION, Noted
from checkers.physics.response.known import Known

WORTH_MANY = 5e-4  # a cause less likely than this after a rough look is not looked at again


@dataclass(frozen=True, slots=True)
class Weighed:
    """A cause with its prior share, its probability, and the log-likelihoods behind it.

    `rows` holds, for each reading (then for what was seen and looked at, where it was
    said), the log-likelihood for each of the `count` members of the cause's cloud;
    `totals` their sum. `evidence` is the logarithm of the likelihood of all readings, and
    `without` the same with each reading left out in turn.
    """

    code: str
    prior: float
    count: int
    rows: tuple[list[float], ...]
    totals: list[float]
    evidence: float
    without: tuple[float, ...] = ()
    probability: float = 0.0


@dataclass(frozen=True, slots=True)
class Evidence:
    """The readings that can be used, what is known, whether the device was seen to open.

    `looked` holds what was looked at, and whether it was out of the ordinary.
    """

    noted: Sequence[Noted]
    known: Known
    seen_to_open: bool | None = None
    looked: tuple[tuple[str, bool], ...] = ()

    @property
    def seen_counts(self) -> bool:
        """Whether it was said what was seen, of tests that were made."""
        return self.seen_to_open is not None and bool(self.noted)


def weigh(evidence: Evidence, priors: Mapping[str, float]) -> tuple[Weighed, ...]:
    """Return the causes with their probabilities, the most likely first.

    Inputs: the evidence; the prior share of each cause.
    Assumptions: one cause at a time. Causes that a small cloud shows to be very unlikely
    keep that estimate; the others are weighed again with a large one.
    """
    rough = _normalised(_likelihoods(code, prior, evidence, FEW) for code, prior in priors.items())
    fine = (
        _likelihoods(one.code, one.prior, evidence, MANY) if one.probability >= WORTH_MANY else one
        for one in rough
    )
    weighed = sorted(_normalised(fine), key=lambda one: -one.probability)
    return tuple(replace(one, without=_without_each(one)) for one in weighed)


def log_mean(logs: Sequence[float]) -> float:
    """Return the logarithm of the mean of numbers given by their logarithms."""
    greatest = max(logs)
    return greatest + log(sum([exp(one - greatest) for one in logs]) / len(logs))


def _normalised(weighed: Iterable[Weighed | None]) -> list[Weighed]:
    found = [one for one in weighed if one is not None]
    logs = [log(one.prior) + one.evidence for one in found]
    greatest = max(logs)
    weights = [exp(one - greatest) for one in logs]
    whole = sum(weights)
    return [
        replace(one, probability=weight / whole) for one, weight in zip(found, weights, strict=True)
    ]


def _likelihoods(code: str, prior: float, evidence: Evidence, count: int) -> Weighed | None:
    """Return a cause with its log-likelihoods, or None where its cloud is empty."""
    members = len(cloud(code, evidence.known, count))
    if not members:
        return None
    rows = _rows(code, evidence, count)
    totals = [sum(column) for column in zip(*rows, strict=True)] or [0.0] * members
    return Weighed(code, prior, count, rows, totals, log_mean(totals))


def _without_each(cause: Weighed) -> tuple[float, ...]:
    """Return the evidence with each reading left out in turn."""
    greatest = max(cause.totals)
    shares = [exp(total - greatest) for total in cause.totals]
    return tuple(
        greatest + log(sum(map(mul, shares, [exp(-one) for one in row])) / len(shares))
        for row in cause.rows
    )


def _rows(code: str, evidence: Evidence, count: int) -> tuple[list[float], ...]:
    noted, known = evidence.noted, evidence.known
    columns = [predicted(code, known, one.attempt, count) for one in noted]
    rows = [
        log_likelihoods(column, one.attempt, one.measured)
        for column, one in zip(columns, noted, strict=True)
    ]
    if evidence.seen_counts:
        shown = [one.measured.said in SHOWS_OPERATION for one in noted]
        operated = list(zip(columns, shown, strict=True))
        rows.append(log_likelihoods_seen(operated, seen_to_open=bool(evidence.seen_to_open)))
    members = cloud(code, known, count)
    return (*rows, *(log_likelihoods_looked(members, known, *look) for look in evidence.looked))
