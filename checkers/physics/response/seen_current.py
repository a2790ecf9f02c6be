"""How much of a test current the device sees, with what else flows in its circuit."""

from __future__ import annotations

from math import inf, sqrt
from typing import NamedTuple

from checkers.physics.condition.state import Surroundings
from checkers.physics.response.attempt import Attempt


class Mixed(NamedTuple):
    """What the circuit does to one test.

    `share` is the part of the test current that the device sees. `along` and `across`
    [mA] are the standing currents in phase with it and a quarter period off.
    """

    share: float
    along: float
    across: float
    dc_shift: float
    disturbs: bool


def mixed_in(around: Surroundings, attempt: Attempt) -> Mixed:
    """Return what the circuit mixes into a test, by its place and by whether loads are on."""
    if attempt.place == "device":
        return Mixed(around.earthed, 0.0, 0.0, 1.0, disturbs=False)
    share = around.earthed * (1.0 - around.shunted * _part_here(around, attempt))
    if not _loads_on(around, attempt):
        return Mixed(share, 0.0, 0.0, 1.0, disturbs=False)
    cosine = around.leakage_cosine
    along = around.leakage * cosine + around.borrowed
    across = around.leakage * sqrt(1.0 - cosine * cosine)
    return Mixed(share, along, across, around.dc_shift, around.disturbs)


def seen(mixed: Mixed, current: float) -> float:
    """Return the residual current [mA r.m.s.] seen at a test current: the sum as phasors."""
    along = current * mixed.share + mixed.along
    return sqrt(along * along + mixed.across * mixed.across)


def needed(mixed: Mixed, trip_current: float) -> float:
    """Return the test current [mA] at which the sum seen reaches the trip current.

    Zero where the standing current alone reaches it; infinite where none can flow.
    """
    square = trip_current * trip_current - mixed.across * mixed.across
    if square <= 0.0:
        return 0.0
    alone = sqrt(square) - mixed.along
    if alone <= 0.0:
        return 0.0
    return alone / mixed.share if mixed.share > 0.0 else inf


def _loads_on(around: Surroundings, attempt: Attempt) -> bool:
    return around.loads_on if attempt.loads == "unknown" else attempt.loads == "on"


def _part_here(around: Surroundings, attempt: Attempt) -> float:
    board = around.at_board if attempt.place == "unknown" else attempt.place == "board"
    return around.board_part if board else 1.0
