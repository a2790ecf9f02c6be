"""Which readings speak for a cause and which against, from the ratio of their likelihoods."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log

from checkers.domain.quantities.quantity import format_number
from checkers.judgement.inference.candidates import CANDIDATES
from checkers.judgement.inference.expected import expected_words, weights_of
from checkers.judgement.inference.weighing.attempts import Noted
from checkers.judgement.inference.weighing.hypotheses import NOW_AND_THEN
from checkers.judgement.inference.weighing.intermittent_fault import shown_either_way
from checkers.judgement.inference.weighing.likelihood import MISREAD, USUAL, stray_likelihood
from checkers.judgement.inference.weighing.posterior import Evidence, Weighed
from checkers.judgement.inference.weighing.samples import predicted
from checkers.wording.book import part

SPEAKS = log(2.0)  # a reading counts from a ratio of two
MANY_TIMES = 1000.0
UNLIKE_ALL = 5.0  # times the likelihood of a stray
WATCHED = {True: "inference.reading-seen-to-open", False: "inference.reading-seen-not-to-open"}


def reasons_for(
    cause: Weighed, causes: Sequence[Weighed], evidence: Evidence
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return what speaks for a cause and what against, strongest first.

    Inputs: the cause; all causes; the evidence. A reading is compared under the cause
    with the same reading under the other causes together, given all other readings.
    """
    ratios = [(_log_ratio(cause, causes, at), at) for at in range(len(cause.apart))]
    speaking = (one for one in ratios if abs(one[0]) >= SPEAKS)
    strongest = sorted(speaking, key=lambda one: -abs(one[0]))
    said = [(ratio, _words(cause, evidence, at, ratio)) for ratio, at in strongest]
    return (
        tuple(words for ratio, words in said if ratio > 0.0),
        tuple(words for ratio, words in said if ratio < 0.0),
    )


def unlike_every_cause(causes: Sequence[Weighed], reading: int, noted: Noted) -> bool:
    """Tell whether a reading is about as unlikely under every cause as a stray would be.

    Inputs: all causes; the reading's place; the reading.
    """
    stray = MISREAD * stray_likelihood(noted.attempt, noted.measured, USUAL.tail)
    with_it = sum(_share(one, one.evidence, causes) for one in causes)
    without = sum(_share(one, one.without[reading], causes) for one in causes)
    return with_it / without < UNLIKE_ALL * stray


def _share(cause: Weighed, evidence: float, causes: Sequence[Weighed]) -> float:
    scale = causes[0].evidence
    return cause.prior * exp(min(evidence - scale, 600.0))


def _log_ratio(cause: Weighed, causes: Sequence[Weighed], reading: int) -> float:
    own = cause.evidence - cause.without[reading]
    others = [one for one in causes if one is not cause]
    if not others:
        return 0.0
    scale = max(one.without[reading] for one in others)
    together = sum(one.prior * exp(one.evidence - scale) for one in others)
    without = sum(one.prior * exp(one.without[reading] - scale) for one in others)
    return own - log(together / without) if together > 0.0 else 0.0


def _words(cause: Weighed, evidence: Evidence, reading: int, ratio: float) -> str:
    if reading >= len(evidence.noted):
        seen = _seen_words(evidence)[reading - len(evidence.noted)]
        return part("inference.look-speaks", seen=seen, times=_times(ratio))
    noted = evidence.noted[reading]
    weights = weights_of(cause.apart[reading])
    known, attempt = evidence.known, noted.attempt
    if cause.code == NOW_AND_THEN:
        columns, weights = shown_either_way(known, attempt, cause.count, weights)
    else:
        columns = predicted(cause.code, known, attempt, cause.count, evidence.own_of(cause.code))
    return part(
        "inference.reading-speaks",
        name=noted.name,
        measured=noted.measured,
        expected=expected_words(columns, weights, attempt, noted.measured),
        times=_times(ratio),
    )


def _seen_words(evidence: Evidence) -> list[str]:
    """Return what was seen and looked at, in the order of the rows after the readings."""
    opened = part(
        "inference.seen-to-open" if evidence.seen_to_open else "inference.seen-not-to-open"
    )
    seen = [opened] if evidence.seen_counts else []
    watched = [
        part(WATCHED[one.opened], name=one.name) for one in evidence.noted if one.opened is not None
    ]
    looks = {one.what: one for one in CANDIDATES.observations}
    looked = [looks[what].yes if strange else looks[what].no for what, strange in evidence.looked]
    return [*seen, *watched, *looked]


def _times(ratio: float) -> str:
    times = exp(min(abs(ratio), 20.0))
    figure = part("inference.over-1000") if times > MANY_TIMES else format_number(times, 2)
    return part("inference.as-likely" if ratio > 0 else "inference.less-likely", figure=figure)
