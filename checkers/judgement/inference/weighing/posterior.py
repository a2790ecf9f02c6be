"""How likely each cause is once the readings are known (Bayes' rule)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest
from math import exp, log

from checkers.domain.causes import REMAINDER
from checkers.judgement.inference.candidates import CANDIDATES
from checkers.judgement.inference.observables import log_likelihoods_looked
from checkers.judgement.inference.weighing.attempts import Noted
from checkers.judgement.inference.weighing.hypotheses import NOW_AND_THEN, READING_WRONG
from checkers.judgement.inference.weighing.intermittent_fault import (
    free_columns,
    mixed_rows,
    shares_of,
)
from checkers.judgement.inference.weighing.likelihood import (
    MISSEEN,
    NEIGHBOURS,
    NONE,
    USUAL,
    Strays,
    log_likelihoods,
    log_likelihoods_seen,
    one_of,
)
from checkers.judgement.inference.weighing.samples import (
    FEW,
    MANY,
    MORE,
    Columns,
    layer,
    predicted_layer,
)
from checkers.judgement.inference.weighing.smoothing import (
    Pulls,
    gains,
    joined,
    pulls_of,
    summed,
    without,
)
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import Lots
from checkers.physics.condition.state import Possible

CERTAIN = 1e-6  # how often what is certain is wrong: above zero, for its logarithm
WORTH_MANY = 1e-3  # a cause less likely than this after a rough look is not looked at again


@dataclass(frozen=True, slots=True)
class Weighed:
    """A cause with its prior share, its probability, and the log-likelihoods behind it.

    `rows` holds, for each reading (then for what was seen and looked at, where it was
    said), the log-likelihood for each of the `count` members of the cause's cloud, `pulls`
    how each pulls at their common offset. `totals` is everything together, and `evidence`
    the logarithm of its mean. `apart` and `without` are the same with each left out in
    turn; they are filled by take_apart.
    """

    code: str
    prior: float
    count: int
    rows: list[list[float]]
    pulls: list[Pulls | None]
    totals: list[float]
    evidence: float
    probability: float = 0.0
    apart: tuple[list[float], ...] = ()
    without: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Evidence:
    """The readings that can be used, what is known, whether the device was seen to open.

    `looked` holds what was looked at, and whether it was out of the ordinary. Where
    `wrong_apart` holds, a sound device with a wrong reading is a cause of its own. Where
    `own_lots` are given, every cause is tried with that draw too, and what was seen is certain.
    """

    noted: Sequence[Noted]
    known: Known
    seen_to_open: bool | None = None
    looked: tuple[tuple[str, bool], ...] = ()
    wrong_apart: bool = False
    own_lots: Lots | None = None

    @property
    def was_watched(self) -> bool:
        """Whether it was said what this device did, of all tests or of one."""
        said = (self.seen_to_open, *(one.opened for one in self.noted))
        return any(one is not None for one in said)

    @property
    def eyes(self) -> tuple[int, ...]:
        """The places of the readings that what was seen speaks of.

        That it was not seen to open speaks of every test but the button, which works
        beside the circuit and is pressed apart.
        """
        if self.seen_to_open is None:
            return ()
        asked = enumerate(self.noted)
        return tuple(at for at, one in asked if self.seen_to_open or not one.attempt.is_button)

    @property
    def seen_counts(self) -> bool:
        """Whether it was said what was seen, of tests that were made."""
        return bool(self.eyes)

    def own_of(self, code: str) -> Lots | None:
        """Return the draw that joins a cause's cloud; what acts by chance has none of its own."""
        return None if code == NOW_AND_THEN else self.own_lots

    def strays(self, code: str) -> Strays:
        """Return the readings that say nothing; in good order none does, told apart."""
        if code == READING_WRONG:
            return one_of(len(self.noted))
        return NONE if code == REMAINDER and self.wrong_apart else USUAL


def weigh(evidence: Evidence, priors: Mapping[str, float]) -> tuple[Weighed, ...]:
    """Return the causes with their probabilities, the most likely first.

    Inputs: the evidence; the prior share of each cause.
    Assumptions: one cause at a time. Causes that a small cloud shows to be very unlikely
    keep that estimate; the others are weighed again with a large one.
    """
    rough = _normalised(_likelihoods(code, prior, evidence, FEW) for code, prior in priors.items())
    fine = (_finer(one, evidence) if one.probability >= WORTH_MANY else one for one in rough)
    return tuple(sorted(_normalised(fine), key=lambda one: -one.probability))


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


def _finer(rough: Weighed, evidence: Evidence) -> Weighed:
    """Return a cause weighed with the whole of its cloud, from what its first layer gave."""
    more = _likelihoods(rough.code, rough.prior, evidence, MORE)
    if more is None:
        return rough
    rows = [one + other for one, other in zip(rough.rows, more.rows, strict=True)]
    pulls = [
        None if one is None or other is None else joined(one, other)
        for one, other in zip(rough.pulls, more.pulls, strict=True)
    ]
    totals = rough.totals + more.totals
    return Weighed(rough.code, rough.prior, MANY, rows, pulls, totals, log_mean(totals))


def _likelihoods(code: str, prior: float, evidence: Evidence, part: int) -> Weighed | None:
    """Return a cause with its log-likelihoods over a layer, or None where that is empty."""
    known, own = evidence.known, evidence.own_of(code)
    members = layer(code, known, part, own)
    if not members:
        return None
    noted, strays = evidence.noted, evidence.strays(code)
    columns = [predicted_layer(code, known, one.attempt, part, own) for one in noted]
    free = columns
    rows = _of_readings(columns, noted, strays)
    if code == NOW_AND_THEN:
        free = free_columns(known, noted, part)
        rows = mixed_rows(rows, free, noted, strays, shares_of(known, part))
    rows += _of_looks(columns, members, evidence)
    pulls = [
        pulls_of(column, one.attempt, one.measured, NEIGHBOURS)
        for column, one in zip(free, noted, strict=True)
    ]
    totals = _added(*rows, gains(summed(pulls, len(members))))
    return Weighed(code, prior, part, rows, pulls, totals, log_mean(totals))


def take_apart(cause: Weighed) -> Weighed:
    """Return a cause with its likelihoods, each reading or look left out in turn."""
    whole = summed(cause.pulls, len(cause.totals))
    gained = gains(whole)
    apart = tuple(
        _without(cause, row, gained, gained if pull is None else gains(without(whole, pull)))
        for row, pull in zip_longest(cause.rows, cause.pulls)
    )
    return replace(cause, apart=apart, without=tuple(log_mean(one) for one in apart))


def _without(
    cause: Weighed, row: Sequence[float], gained: Sequence[float], left: Sequence[float]
) -> list[float]:
    """Return the totals without one row; and with what the common offset then gains, is left."""
    rows = zip(cause.totals, row, gained, left, strict=True)
    return [total - own - gain + other for total, own, gain, other in rows]


def _added(*columns: Sequence[float]) -> list[float]:
    return [sum(row) for row in zip(*columns, strict=True)]


def _of_readings(
    columns: Sequence[Columns], noted: Sequence[Noted], strays: Strays
) -> list[list[float]]:
    return [
        log_likelihoods(column, one.attempt, one.measured, strays)
        for column, one in zip(columns, noted, strict=True)
    ]


def _of_looks(
    columns: Sequence[Columns], members: Sequence[Possible], evidence: Evidence
) -> list[list[float]]:
    """Return the log-likelihoods of what was seen and looked at."""
    known = evidence.known
    operated = [
        (column, one.shows_operation) for column, one in zip(columns, evidence.noted, strict=True)
    ]
    certain = evidence.own_lots is not None
    wrong, missed = (CERTAIN, CERTAIN) if certain else (CANDIDATES.error / 2.0, MISSEEN)
    watched = [
        log_likelihoods_seen([test], seen_to_open=one.opened, missed=missed)
        for test, one in zip(operated, evidence.noted, strict=True)
        if one.opened is not None
    ]
    looked = [log_likelihoods_looked(members, known, *look, wrong) for look in evidence.looked]
    if not evidence.seen_counts:
        return [*watched, *looked]
    with_eyes = [operated[at] for at in evidence.eyes]
    opened = bool(evidence.seen_to_open)
    seen = log_likelihoods_seen(with_eyes, seen_to_open=opened, missed=missed)
    return [seen, *watched, *looked]
