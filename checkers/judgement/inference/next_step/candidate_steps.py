"""What could be done next with this device: tests first of all, each with its outcomes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from checkers.domain.device.placed_readings import PlacedReading
from checkers.domain.device.readings import Test, Waveform
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.quantities.ranges import range_in_words
from checkers.judgement.case import Case
from checkers.judgement.inference.candidates import CANDIDATES, ReadingCandidate
from checkers.judgement.inference.next_step.observations import looked_at, watched
from checkers.judgement.inference.next_step.repeats import repeats
from checkers.judgement.inference.next_step.step import Chances, NextStep, binned
from checkers.judgement.inference.weighing.attempts import attempt_of
from checkers.judgement.inference.weighing.posterior import Evidence
from checkers.judgement.limits.time_limits import product_times
from checkers.physics.condition.state import Possible
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import predictions
from checkers.wording.book import part

RAMP_EDGES = (0.5, 1.0, 1.4, 2.0)
LIMITED_AT = (5.0, 2.0, 1.0)


def candidate_steps(case: Case, evidence: Evidence) -> tuple[NextStep, ...]:
    """Return everything that could be done next with this device and is not known already."""
    known = evidence.known
    open_still = {
        name
        for name, value in (
            ("dc", known.dc),
            ("leakage", known.leakage),
            ("opened", evidence.was_watched or None),
        )
        if value is None
    }
    watching = watched_attempt(case)
    looked = {what for what, _ in evidence.looked}
    looks = (one for one in CANDIDATES.observations if one.what not in looked)
    kind = case.device.type
    tests = (one for one in CANDIDATES.readings if one.types is None or kind in one.types)
    return (
        *(looked_at(one, known) for one in looks if one.needs <= open_still),
        *(watched(one, watching) for one in CANDIDATES.watches if one.needs <= open_still),
        *repeats(evidence.noted),
        *(_test(one, case) for one in tests),
    )


def _attempt(candidate: ReadingCandidate, case: Case) -> Attempt:
    reading = PlacedReading(
        value="-",
        test=candidate.test,
        multiple=candidate.multiple,
        waveform=candidate.waveform,
        place=candidate.place,
    )
    return replace(attempt_of(reading, case, first=False), loads=candidate.loads)


def watched_attempt(case: Case) -> Attempt:
    """Return the trip time at the rating that is repeated and watched."""
    plain = ReadingCandidate("", Test.TRIP_TIME, 1.0, Waveform.AC, "unknown", "unknown", None)
    return _attempt(plain, case)


def _test(candidate: ReadingCandidate, case: Case) -> NextStep:
    attempt = _attempt(candidate, case)
    if attempt.is_button:
        words = (part("inference.button-operates"), part("inference.button-does-nothing"))
        return NextStep(candidate.words, words, _button_chances(attempt), attempt)
    edges = _edges(attempt, case)
    unit = "mA" if attempt.is_ramp else "ms"
    between = [range_in_words(low, high, unit) for low, high in pairwise(edges)]
    first = part("inference.below", figure=format_quantity(edges[0], unit))
    last = part("inference.above-or-none", figure=format_quantity(edges[-1], unit))
    return NextStep(candidate.words, (first, *between, last), binned(attempt, edges), attempt)


def _edges(attempt: Attempt, case: Case) -> tuple[float, ...]:
    """Return the figures that matter: shares of the rating, or the limits of its times."""
    if attempt.is_ramp:
        return tuple(edge * attempt.rated for edge in RAMP_EDGES)
    if attempt.test == Test.NO_TRIP:
        return (attempt.window,)
    levels = (multiple * attempt.rated for multiple in LIMITED_AT)
    limits = (product_times(case, Waveform.AC.value, level).promised.at_most for level in levels)
    inside = {limit for limit in limits if limit is not None and limit < attempt.window}
    return (*sorted(inside), attempt.window)


def _button_chances(attempt: Attempt) -> Chances:
    def chances(possible: Possible) -> Sequence[float]:
        shows = sum(share * one.shows for share, one in predictions(possible, attempt))
        return (shows, 1.0 - shows)

    return chances
