"""The random numbers behind one possible state of affairs, drawn evenly and repeatably."""

from __future__ import annotations

from functools import cache
from random import Random
from statistics import NormalDist
from typing import NamedTuple

EVEN_SEED = 61008


class Lots(NamedTuple):
    """One draw: normal scores first, then fractions from 0 to 1."""

    own: float
    opening: float
    lag: float
    half_wave: float
    smooth: float
    button: float
    delay: float
    excess: float
    leakage: float
    extra: float
    other_own: float
    other_opening: float
    other_lag: float
    type: float
    hurry: float
    waits: float
    loads: float
    board: float
    phase: float
    core: float
    kind: float
    size: float
    side: float


SCORES = Lots._fields.index("type")
COLUMNS = len(Lots._fields)


@cache
def even_lots(count: int) -> tuple[Lots, ...]:
    """Return `count` draws that cover every number evenly (a Latin hypercube), always the same."""
    random = Random(EVEN_SEED)  # noqa: S311  # a model's draws, nothing secret
    columns = [_even_column(random, count) for _ in range(COLUMNS)]
    return tuple(_lots(row) for row in zip(*columns, strict=True))


def random_lots(random: Random) -> Lots:
    """Return one draw of a random generator."""
    return _lots(tuple(random.random() for _ in range(COLUMNS)))


def _even_column(random: Random, count: int) -> list[float]:
    column = [(place + 0.5) / count for place in range(count)]
    random.shuffle(column)
    return column


def _lots(fractions: tuple[float, ...]) -> Lots:
    normal = NormalDist()
    scores = (normal.inv_cdf(min(max(one, 1e-9), 1 - 1e-9)) for one in fractions[:SCORES])
    return Lots(*scores, *fractions[SCORES:])
