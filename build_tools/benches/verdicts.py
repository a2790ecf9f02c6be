"""How long a verdict takes in CPython, over every example of every checker."""

from __future__ import annotations

import time
from statistics import quantiles
from typing import Any

import checkers
from build_tools.benches.budgets import Measurement
from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker

ROUNDS = 20
WEIGHING = frozenset({"explain", "practice"})  # their budget is another one


def measure() -> list[Measurement]:
    """Ask each example several times, after a first time that reads the tables.

    Returns:
        The 95th percentile of each checker's times [ms].
    """
    return [Measurement(_name(checker), _slow(checker), checker.slug) for checker in CHECKERS]


def _name(checker: Checker) -> str:
    kind = "weighing" if checker.slug in WEIGHING else "verdict"
    return f"{kind}-95th-percentile"


def _slow(checker: Checker) -> float:
    requests = [dict(example.request) for example in checker.examples]
    for request in requests:
        _time(checker.slug, request)
    times = [_time(checker.slug, request) for _ in range(ROUNDS) for request in requests]
    return quantiles(times, n=20)[-1]


def _time(slug: str, request: dict[str, Any]) -> float:
    start = time.perf_counter()
    checkers.run(slug, request)
    return (time.perf_counter() - start) * 1e3
