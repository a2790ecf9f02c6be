"""Things to look at or to measure next, and what they show in a possible state of affairs."""

from __future__ import annotations

from collections.abc import Sequence

from checkers.judgement.inference.candidates import CANDIDATES, Observation, Watch
from checkers.judgement.inference.next_step.step import NextStep
from checkers.judgement.inference.observables import PREDICATES
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.state import Possible
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import predictions


def watched(watch: Watch, attempt: Attempt) -> NextStep:
    """Return the step of watching which device opens in a trip time [of the attempt]."""

    def chances(possible: Possible) -> Sequence[float]:
        own = another = 0.0
        for share, shown in predictions(possible, attempt):
            own += share * (shown.shows * shown.opens_shown + shown.opens_unseen)
            another += share * shown.shows * (1.0 - shown.opens_shown)
        return _blurred((own, another, max(0.0, 1.0 - own - another)))

    return NextStep(watch.words, (watch.own, watch.another, watch.none), chances, attempt, "watch")


def looked_at(observation: Observation, known: Known) -> NextStep:
    """Return the step of making an observation, with its two outcomes."""
    true_of = PREDICATES[observation.what]

    def chances(possible: Possible) -> Sequence[float]:
        return _blurred((1.0, 0.0) if true_of(possible, known) else (0.0, 1.0))

    return NextStep(
        observation.words, (observation.yes, observation.no), chances, None, observation.what
    )


def _blurred(chances: Sequence[float]) -> Sequence[float]:
    """Let an observation be wrong now and then."""
    error = CANDIDATES.error
    return [(1.0 - error) * one + error / len(chances) for one in chances]
