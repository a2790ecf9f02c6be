"""A thing to do next, with the outcomes it may have and the chance of each."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from checkers.physics.condition.state import Possible
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import predictions
from checkers.physics.response.timing import below

Chances = Callable[[Possible], Sequence[float]]


@dataclass(frozen=True, slots=True)
class NextStep:
    """A thing to do next: its words, the words of each outcome, and their chances.

    It is a test, `attempt`; or a look, by its key; or, with "watch", a test that is watched.
    """

    words: str
    outcomes: tuple[str, ...]
    chances: Chances
    attempt: Attempt | None = None
    look: str = ""


def binned(attempt: Attempt, edges: Sequence[float]) -> Chances:
    """Return the chances of a figure below the first edge, between edges, and above or none."""

    def chances(possible: Possible) -> Sequence[float]:
        sums = [0.0] * len(edges)
        for share, shown in predictions(possible, attempt):
            for at, edge in enumerate(edges):
                sums[at] += share * shown.shows * below((edge - shown.mean) / shown.spread)
        return [high - low for low, high in zip((0.0, *sums), (*sums, 1.0), strict=True)]

    return chances
