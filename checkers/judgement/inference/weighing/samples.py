"""Many possible states of affairs under one cause, and what each would show in a test."""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from functools import lru_cache
from itertools import chain
from typing import NamedTuple

from checkers.judgement.inference.weighing.hypotheses import modelled_as
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import Lots, even_lots
from checkers.physics.condition.sound_device import in_good_order
from checkers.physics.condition.state import Possible
from checkers.physics.condition.under_cause import CHANGES
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import predict

FEW, MORE = 120, 360
MANY = FEW + MORE  # the few, and more: nothing is drawn or predicted twice


class Columns(NamedTuple):
    """The predictions of a cloud for one test, a column for each field of Prediction."""

    shows: Sequence[float]
    mean: Sequence[float]
    spread: Sequence[float]
    opens_shown: Sequence[float]
    opens_unseen: Sequence[float]


def cloud(cause: str, known: Known, count: int, own: Lots | None = None) -> tuple[Possible, ...]:
    """Return the possible states of affairs under a cause, evenly drawn, always the same.

    Inputs: the cause; what is known; FEW or MANY; a draw that joins the few, if there is one.
    """
    few = layer(cause, known, FEW, own)
    return few if count == FEW else few + layer(cause, known, MORE)


def layer(cause: str, known: Known, count: int, own: Lots | None = None) -> tuple[Possible, ...]:
    """Return one layer of a cause's cloud: the FEW, or the MORE that join them."""
    even = _layer(modelled_as(cause), known, count)
    return even if own is None or count != FEW else (*even, _own(modelled_as(cause), known, own))


@lru_cache(maxsize=60)
def _own(cause: str, known: Known, own: Lots) -> Possible:
    return CHANGES[cause](in_good_order(known, own), known, own)


@lru_cache(maxsize=120)
def _layer(cause: str, known: Known, count: int) -> tuple[Possible, ...]:
    change = CHANGES[cause]
    pairs = zip(_sound(known, count), even_lots(count), strict=True)
    return tuple(change(sound, known, lots) for sound, lots in pairs)


@lru_cache(maxsize=8)
def _sound(known: Known, count: int) -> tuple[Possible, ...]:
    return tuple(in_good_order(known, lots) for lots in even_lots(count))


def predicted(
    cause: str, known: Known, attempt: Attempt, count: int, own: Lots | None = None
) -> Columns:
    """Return what a test would show, for every member of a cause's cloud of FEW or MANY."""
    few = predicted_layer(cause, known, attempt, FEW, own)
    if count == FEW:
        return few
    return _chained(few, predicted_layer(cause, known, attempt, MORE))


def predicted_layer(
    cause: str, known: Known, attempt: Attempt, count: int, own: Lots | None = None
) -> Columns:
    """Return what a test would show, for every member of a layer."""
    even = _predicted_layer(modelled_as(cause), known, attempt, count)
    if own is None or count != FEW:
        return even
    shown = predict(_own(modelled_as(cause), known, own), attempt)
    return _chained(even, Columns(*((one,) for one in shown)))


def _chained(first: Columns, then: Columns) -> Columns:
    return Columns(*(array("d", chain(*both)) for both in zip(first, then, strict=True)))


@lru_cache(maxsize=480)
def _predicted_layer(cause: str, known: Known, attempt: Attempt, count: int) -> Columns:
    rows = [predict(possible, attempt) for possible in _layer(cause, known, count)]
    return Columns(*(array("d", column) for column in zip(*rows, strict=True)))
