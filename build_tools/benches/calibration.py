"""Whether explain's probabilities mean what they say: devices drawn, read, and explained.

A cause is drawn, then a device under it, then readings as an instrument would show them; explain
sees only the readings. Causes are drawn alike often, and explain is told so: with their true
shares nine draws in ten would be in good order and would say little of the others.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from random import Random

from build_tools.benches.budgets import Measurement
from checkers.domain.causes import CAUSES
from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device
from checkers.domain.device.placed_readings import PlacedReading
from checkers.domain.device.readings import Circuit, Instrument
from checkers.judgement.case import Case
from checkers.judgement.inference.explanation import known_of
from checkers.judgement.inference.weighing.attempts import attempt_of, noted_tests
from checkers.judgement.inference.weighing.posterior import Evidence, weigh
from checkers.physics.condition.random_draws import random_lots
from checkers.physics.condition.state import Possible
from checkers.physics.condition.under_cause import under_cause
from checkers.physics.response.display import happens, shown_reading

SEED = 557
DRAWS = 3000
STEPS = 10  # of the reliability table
DAY = date(2026, 1, 1)
PLAN = (
    PlacedReading("-", "no-trip", 0.5, None, "ac", "0"),
    PlacedReading("-", "trip-time", 1.0, None, "ac", "0"),
    PlacedReading("-", "trip-time", 1.0, None, "ac", "180"),
    PlacedReading("-", "trip-time", 5.0, None, "ac", "0"),
    PlacedReading("-", "trip-time", 5.0, None, "ac", "180"),
    PlacedReading("-", "ramp", None, None, "ac", ""),
    PlacedReading("-", "button", None, None, "ac", ""),
)
LEAST, MOST = 3, 6  # readings a device
CASE = Case(
    Device(type="A", rated_residual_current=30.0), Circuit(), Instrument(), CODES["iec"], DAY
)


@dataclass(frozen=True, slots=True)
class Draw:
    """A drawn cause, the probability of each cause as explained, most likely first."""

    cause: str
    explained: tuple[tuple[str, float], ...]

    @property
    def named(self) -> bool:
        """Whether the most likely cause is the true one."""
        return self.explained[0][0] == self.cause

    @property
    def brier(self) -> float:
        """The sum over causes of the squared distance between probability and truth."""
        return sum((chance - (code == self.cause)) ** 2 for code, chance in self.explained)


@dataclass(frozen=True, slots=True)
class Step:
    """One row of the reliability table: stated probabilities in a range, and how often true."""

    count: int
    stated: float
    true: float


def draws(count: int, seed: int = SEED) -> Iterator[Draw]:
    """Yield devices drawn at random, with what explain makes of their readings.

    Args:
        count: how many.
        seed: of the random generator; the same seed gives the same draws.
    """
    random = Random(seed)  # noqa: S311  # a model's draws, nothing secret
    causes = sorted(CAUSES)
    alike = dict.fromkeys(causes, 1.0 / len(causes))
    for _ in range(count):
        cause = random.choice(causes)
        readings = readings_under(cause, random)
        noted, _ = noted_tests(readings, CASE)
        weighed = weigh(Evidence(noted, known_of(CASE)), alike)
        yield Draw(cause, tuple((one.code, one.probability) for one in weighed))


def readings_under(cause: str, random: Random) -> list[PlacedReading]:
    """Return some of the plan's readings of one device, in its order."""
    possible = under_cause(cause, known_of(CASE), random_lots(random))
    chosen = sorted(random.sample(range(len(PLAN)), random.randint(LEAST, MOST)))
    taken: list[PlacedReading] = []
    for at in chosen:
        earlier = (attempt_of(one, CASE, first=False) for one in taken)
        first = not any(one.tries_the_mechanism for one in earlier)
        taken.append(_taken(PLAN[at], possible, random, first=first))
    return taken


def _taken(
    reading: PlacedReading, possible: Possible, random: Random, *, first: bool
) -> PlacedReading:
    attempt = attempt_of(reading, CASE, first=first)
    value = shown_reading(happens(possible, attempt, random), attempt, random)
    return replace(reading, value=value)


def reliability(drawn: Sequence[Draw]) -> list[Step]:
    """Return, for each range of stated probability, how often the cause was true.

    Args:
        drawn: the draws; every cause of every draw counts, not the first alone.

    Returns:
        A step for each tenth that has entries.
    """
    pairs = [(chance, code == one.cause) for one in drawn for code, chance in one.explained]
    steps = []
    for at in range(STEPS):
        inside = [pair for pair in pairs if at <= min(pair[0] * STEPS, STEPS - 1e-9) < at + 1]
        if inside:
            stated = sum(chance for chance, _ in inside) / len(inside)
            true = sum(hit for _, hit in inside) / len(inside)
            steps.append(Step(len(inside), stated, true))
    return steps


def measure() -> list[Measurement]:
    """Draw devices and hold explain's probabilities against the truth.

    Returns:
        How often the most likely cause is right [%], the Brier score, and for each range of
        stated probability the distance between stated and true [points].
    """
    drawn = list(draws(DRAWS))
    named = 100.0 * sum(one.named for one in drawn) / len(drawn)
    brier = sum(one.brier for one in drawn) / len(drawn)
    return [
        Measurement("explain-named-rightly", named),
        Measurement("explain-brier-score", brier),
        *(_figure(step) for step in reliability(drawn)),
    ]


def _figure(step: Step) -> Measurement:
    about = f"{100 * step.stated:.0f} % stated, {100 * step.true:.0f} % true ({step.count})"
    return Measurement("explain-stated-against-true", 100.0 * abs(step.stated - step.true), about)
