"""Whether doing what explain proposes next tells more than other orders of the same tests.

Causes are drawn alike often, and explain is told so. Each device begins with one trip time at ×1.
Then each order goes its own way with the same device; after every step the causes as explained are
compared with the true one.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from random import Random
from statistics import fmean
from typing import Any

from build_tools.benches.budgets import Measurement
from build_tools.benches.calibration import CASE, SEED
from build_tools.benches.inference.random_devices import AskedDevice, drawn_device
from build_tools.machine.progress import say, show_count
from checkers.domain.causes import CAUSES
from checkers.domain.device.placed_readings import PlacedReading
from checkers.judgement.inference.explanation import known_of
from checkers.judgement.inference.next_step.candidate_steps import candidate_steps
from checkers.judgement.inference.next_step.most_telling import most_telling
from checkers.judgement.inference.next_step.step import NextStep
from checkers.judgement.inference.weighing.attempts import attempt_of
from checkers.judgement.inference.weighing.posterior import Evidence, Weighed, weigh

ROUNDS = 360  # devices
STEPS = 6  # things done after the first
HELD = 3  # steps after which the orders are held against one another
FIRST = PlacedReading("-", "trip-time", 1.0, None, "ac", "0")
# After ×1, the order of a usual test sheet, then looks at the device and at the instrument:
# common practice.
USUAL = ("no-trip 0.5", "trip-time 5", "ramp 1.1", "button 0", "marking", "settings")
CAUSE_CODES = tuple(sorted(CAUSES))
ALIKE = dict.fromkeys(CAUSE_CODES, 1.0 / len(CAUSE_CODES))


@dataclass(frozen=True, slots=True)
class Standing:
    """After some steps: whether the first cause is right, the chance of the true one, the score."""

    right: bool
    truth: float
    brier: float


@dataclass(frozen=True, slots=True)
class Choice:
    """What an order chooses from: the step, what could be done, and what is known so far."""

    step: int
    could: Sequence[NextStep]
    done: Sequence[str]
    evidence: Evidence
    causes: Sequence[Weighed]
    random: Random


def follow(choice: Choice) -> NextStep | None:
    """Return what explain proposes, or None where it proposes nothing."""
    best = most_telling(choice.could, choice.evidence, choice.causes)
    return None if best is None else best.step


def usual(choice: Choice) -> NextStep | None:
    """Return what comes next on a usual test sheet."""
    return next(one for one in choice.could if _key(one) == USUAL[choice.step])


def chance(choice: Choice) -> NextStep | None:
    """Return anything that was not done yet."""
    return choice.random.choice([one for one in choice.could if one.words not in choice.done])


ORDERS: Mapping[str, Callable[[Choice], NextStep | None]] = {
    "as-proposed": follow,
    "usual-order": usual,
    "any-order": chance,
}


def _key(step: NextStep) -> str:
    """Return a look's name, or test and multiple of a plain test on AC with the loads off."""
    attempt = step.attempt
    if attempt is None or step.look:
        return step.look
    plain = attempt.place == "unknown" and attempt.loads in ("off", "unknown")
    times = attempt.current / attempt.rated
    return f"{attempt.test} {times:g}" if plain and attempt.waveform == "ac" else ""


def gone(device: AskedDevice, order: str, steps: int) -> list[Standing]:
    """Return how an order stands with a device at first, and after each of its steps.

    Where nothing is proposed any more, it stands as it stood.
    """
    random = Random(f"{device.cause} {order}")  # noqa: S311  # a model's draws, nothing secret
    evidence = Evidence((), known_of(CASE))
    attempt = attempt_of(FIRST, CASE, first=True)
    evidence = Evidence((device.noted("trip time ×1", attempt, evidence),), evidence.known)
    causes = weigh(evidence, ALIKE)
    standings, done = [_standing(device, causes)], list[str]()
    for step in range(steps):
        could = candidate_steps(CASE, evidence)
        asked = ORDERS[order](Choice(step, could, done, evidence, causes, random))
        if asked is None:
            return standings + [standings[-1]] * (steps - step)
        done.append(asked.words)
        evidence = device.answered(asked, evidence)
        causes = weigh(evidence, ALIKE)
        standings.append(_standing(device, causes))
    return standings


def _standing(device: AskedDevice, causes: Sequence[Weighed]) -> Standing:
    chances = {one.code: one.probability for one in causes}
    return Standing(
        causes[0].code == device.cause,
        chances.get(device.cause, 0.0),
        sum((part - (code == device.cause)) ** 2 for code, part in chances.items()),
    )


def table(rounds: int = ROUNDS) -> dict[str, Any]:
    """Let each order go its way with the same devices.

    Args:
        rounds: how many devices; their causes go round, so that each comes alike often.

    Returns:
        For each order, after no step and after each: how often the first cause is right [%],
        the mean chance of the true cause, and the mean Brier score.
    """
    gone_with: dict[str, list[list[Standing]]] = {order: [] for order in ORDERS}
    for number in range(rounds):
        for order in ORDERS:
            gone_with[order].append(gone(device_of(number), order, STEPS))
        show_count(number + 1, rounds, "devices")
    found = {order: _steps(standings) for order, standings in gone_with.items()}
    for line in side_by_side(found):
        say(line)
    return {"devices": rounds, "orders": found}


def device_of(number: int) -> AskedDevice:
    """Return one of the devices, always the same: each order gets it fresh."""
    return drawn_device(CAUSE_CODES[number % len(CAUSE_CODES)], CASE, SEED + number)


def _steps(standings: Sequence[Sequence[Standing]]) -> list[dict[str, float]]:
    return [
        {
            "right": 100.0 * fmean(one.right for one in after),
            "truth": fmean(one.truth for one in after),
            "brier": fmean(one.brier for one in after),
        }
        for after in zip(*standings, strict=True)
    ]


def side_by_side(found: Mapping[str, Sequence[Mapping[str, float]]]) -> list[str]:
    """Return lines that hold the orders beside one another, a line for each number of steps."""
    heads = [f"{order:<24}" for order in found]
    lines = [f"{'':<8}{''.join(heads)}", f"{'after':<8}{'right  truth  Brier     ' * len(heads)}"]
    for step, ones in enumerate(zip(*found.values(), strict=True)):
        cells = (f"{o['right']:4.0f} %  {o['truth']:5.2f}  {o['brier']:5.2f}     " for o in ones)
        lines.append(f"{step:<8}{''.join(cells)}")
    return lines


def measurements(found: Mapping[str, Any]) -> list[Measurement]:
    """Return by how much what explain proposes is ahead of each other order [points]."""
    right = {order: steps[HELD]["right"] for order, steps in found["orders"].items()}
    ahead = right.pop("as-proposed")
    return [
        Measurement("next-test-ahead", ahead - other, f"of {order}, after {HELD}")
        for order, other in right.items()
    ]
