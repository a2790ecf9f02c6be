"""Devices drawn from the response model that answer what they are asked."""

from __future__ import annotations

from dataclasses import dataclass, replace
from random import Random

from checkers.domain.device.placed_readings import PlacedReading
from checkers.judgement.case import Case
from checkers.judgement.inference.candidates import CANDIDATES
from checkers.judgement.inference.explanation import known_of
from checkers.judgement.inference.next_step.step import NextStep
from checkers.judgement.inference.observables import PREDICATES
from checkers.judgement.inference.weighing.attempts import Noted
from checkers.judgement.inference.weighing.posterior import Evidence
from checkers.physics.condition.random_draws import random_lots
from checkers.physics.condition.state import Possible
from checkers.physics.condition.under_cause import under_cause
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.display import happens, watched_reading


@dataclass(frozen=True, slots=True)
class AskedDevice:
    """A device with a hidden cause, as it really is, and the chances of what it shows."""

    cause: str
    possible: Possible
    random: Random

    def answered(self, step: NextStep, evidence: Evidence) -> Evidence:
        """Return the evidence with what this device shows when a step is taken."""
        if step.look and step.look != "watch":
            strange = PREDICATES[step.look](self.possible, evidence.known)
            if self.random.random() < CANDIDATES.error / 2.0:
                strange = not strange
            return replace(evidence, looked=(*evidence.looked, (step.look, strange)))
        if step.attempt is None:
            raise ValueError(f"{step.words!r} is neither a look nor a test")
        watched = step.look == "watch"
        noted = self.noted(step.words, step.attempt, evidence, watched=watched)
        return replace(evidence, noted=(*evidence.noted, noted))

    def noted(
        self, name: str, attempt: Attempt, evidence: Evidence, *, watched: bool = False
    ) -> Noted:
        """Return what a test of this device shows, after what was tested before."""
        first = not any(one.attempt.tries_the_mechanism for one in evidence.noted)
        made = replace(attempt, first=first)
        shows, opened = watched_reading(
            happens(self.possible, made, self.random), made, self.random
        )
        measured = PlacedReading(shows, made.test).measured
        return Noted(name, made, measured, opened if watched else None)


def drawn_device(cause: str, case: Case, seed: int) -> AskedDevice:
    """Return a device under a cause; the same seed gives the same device and the same answers."""
    random = Random(seed)  # noqa: S311  # a model's draws, nothing secret
    return AskedDevice(cause, under_cause(cause, known_of(case), random_lots(random)), random)
