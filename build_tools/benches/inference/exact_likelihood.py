"""The exact likelihood of a shown reading under the response model, for very many devices.

What shown_reading draws has this likelihood and no other: strays as strays.py has them, figures to
a tenth, and everything beyond the display shown as its end. Explain comes near it with a few
hundred devices a cause; with very many it is the best that anybody can do who knows the model.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from math import pi, sqrt
from random import Random

import numpy as np
from numpy.typing import NDArray
from scipy.special import logsumexp, ndtr

from checkers.domain.causes import REMAINDER
from checkers.domain.quantities.measured_value import Said
from checkers.judgement.inference.weighing.attempts import Noted
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import random_lots
from checkers.physics.condition.state import Possible
from checkers.physics.condition.under_cause import under_cause
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.display import LEAST_TIME, display_end
from checkers.physics.response.prediction import predict
from checkers.physics.response.stray_readings import chance_beyond
from checkers.physics.response.stray_readings import density as stray_density
from checkers.physics.scatter import SCATTER

DEVICES = 8000  # a cause
SEED = 4051
STRAY = SCATTER.misread.typical
TAIL = SCATTER.stray_tail.typical
TENTH = 0.05  # what is shown as the least time lies up to half a tenth above it
NEVER = 1e-12  # in place of zero, so that a logarithm can be taken

Columns = tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]


def log_evidence(cause: str, known: Known, noted: Sequence[Noted]) -> float:
    """Return the logarithm of how likely readings are under a cause, over all its devices."""
    totals = sum(_either_way(cause, known, one) for one in noted)
    return float(logsumexp(totals) - np.log(DEVICES))


def _either_way(cause: str, known: Known, noted: Noted) -> NDArray[np.float64]:
    """Return it where an erratic mechanism may have stuck in this operation, or not."""
    sticks = np.array([one.unit.sticks for one in _devices(cause, known)])
    stuck = log_likelihoods(_columns(cause, known, noted.attempt), noted)
    if np.all(sticks == 1.0):
        return stuck
    free = log_likelihoods(_columns(REMAINDER, known, noted.attempt), noted)
    return np.logaddexp(np.log(sticks) + stuck, np.log1p(-sticks) + free)


def log_likelihoods(columns: Columns, noted: Noted) -> NDArray[np.float64]:
    """Return the logarithm of the likelihood of one reading for each device."""
    shows, mean, spread = columns
    measured, attempt = noted.measured, noted.attempt
    if attempt.is_button:
        operates = 0.5 * STRAY + (1.0 - STRAY) * shows
        return np.log(operates if measured.said is Said.OPERATES else 1.0 - operates)
    end, _ = display_end(attempt)
    if measured.said is not Said.FIGURE:
        stray = chance_beyond(attempt, end, TAIL)
        return _log(STRAY * stray + (1.0 - STRAY) * (1.0 - shows * ndtr((end - mean) / spread)))
    if measured.value <= LEAST_TIME:
        least = LEAST_TIME + TENTH
        stray = 1.0 - chance_beyond(attempt, least, TAIL)
        return _log(STRAY * stray + (1.0 - STRAY) * shows * ndtr((least - mean) / spread))
    score = (measured.value - mean) / spread
    density = np.exp(-0.5 * score * score) / (spread * sqrt(2.0 * pi))
    stray = stray_density(attempt, measured.value, TAIL)
    return _log(STRAY * stray + (1.0 - STRAY) * shows * density)


def _log(values: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.log(np.maximum(values, NEVER))


@cache
def _columns(cause: str, known: Known, attempt: Attempt) -> Columns:
    rows = [predict(possible, attempt)[:3] for possible in _devices(cause, known)]
    shows, mean, spread = np.array(rows, dtype=np.float64).T
    return shows, mean, spread


@cache
def _devices(cause: str, known: Known) -> tuple[Possible, ...]:
    random = Random(SEED)  # noqa: S311  # a model's draws, nothing secret
    return tuple(under_cause(cause, known, random_lots(random)) for _ in range(DEVICES))
