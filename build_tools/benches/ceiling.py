"""How near explain comes to the best that can be done with the same readings.

The best is Bayes' rule with the exact likelihood of the model that draws the readings, over very
many devices a cause. Where it is wrong, the readings themselves do not tell the cause.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import exp
from random import Random
from statistics import fmean
from typing import Any

from build_tools.benches.budgets import Measurement
from build_tools.benches.calibration import CASE, SEED, readings_under
from build_tools.benches.inference.exact_likelihood import log_evidence
from build_tools.machine.progress import say, show_count
from checkers.domain.causes import CAUSES
from checkers.judgement.inference.explanation import known_of
from checkers.judgement.inference.weighing.attempts import Noted, noted_tests
from checkers.judgement.inference.weighing.posterior import Evidence, weigh

ROUNDS = 1000  # devices
CODES = tuple(sorted(CAUSES))
ALIKE = dict.fromkeys(CODES, 1.0 / len(CODES))
KNOWN = known_of(CASE)


def table(rounds: int = ROUNDS) -> dict[str, Any]:
    """Give the readings of drawn devices to explain and to the exact rule.

    Args:
        rounds: how many devices.

    Returns:
        For each of the two: how often the first cause is right [%], the mean chance of the true
        cause, and the mean Brier score.
    """
    random = Random(SEED)  # noqa: S311  # a model's draws, nothing secret
    stated: dict[str, list[tuple[str, Mapping[str, float]]]] = {"explain": [], "exact": []}
    for number in range(rounds):
        cause = random.choice(CODES)
        noted, _ = noted_tests(readings_under(cause, random), CASE)
        stated["explain"].append((cause, explained(noted)))
        stated["exact"].append((cause, exact(noted)))
        show_count(number + 1, rounds, "devices")
    found = {way: _scores(pairs) for way, pairs in stated.items()}
    for way, scores in found.items():
        say(f"{way:<8}" + ", ".join(f"{name} {score:.3g}" for name, score in scores.items()))
    return {"devices": rounds, "ways": found}


def explained(noted: Sequence[Noted]) -> dict[str, float]:
    """Return the chance of each cause as explain states it, all causes alike often."""
    return {one.code: one.probability for one in weigh(Evidence(noted, KNOWN), ALIKE)}


def exact(noted: Sequence[Noted]) -> dict[str, float]:
    """Return the chance of each cause by the exact likelihood, all causes alike often."""
    logs = {code: log_evidence(code, KNOWN, noted) for code in CODES}
    greatest = max(logs.values())
    weights = {code: exp(one - greatest) for code, one in logs.items()}
    whole = sum(weights.values())
    return {code: one / whole for code, one in weights.items()}


def _scores(pairs: Sequence[tuple[str, Mapping[str, float]]]) -> dict[str, float]:
    firsts = [(max(chances, key=chances.__getitem__), cause) for cause, chances in pairs]
    return {
        "right": 100.0 * fmean(first == cause for first, cause in firsts),
        "truth": fmean(chances.get(cause, 0.0) for cause, chances in pairs),
        "brier": fmean(
            sum((chance - (code == cause)) ** 2 for code, chance in chances.items())
            for cause, chances in pairs
        ),
    }


def measurements(found: Mapping[str, Any]) -> list[Measurement]:
    """Return by how much explain falls short of the exact rule."""
    ours, best = found["ways"]["explain"], found["ways"]["exact"]
    return [
        Measurement("explain-short-of-exact", best["right"] - ours["right"], "right"),
        Measurement("explain-brier-over-exact", ours["brier"] - best["brier"]),
    ]
