"""What inspection settles before any weighing: the type, the leakage, and what the eye saw."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from checkers.domain.causes import REMAINDER, STATED
from checkers.judgement.inference.weighing.hypotheses import READING_WRONG
from checkers.physics.condition.random_draws import Lots

SOUND = (REMAINDER, READING_WRONG)
TOO_LOW, BLINDED = "type-too-low", "blinded-by-dc"
ADDS, OPPOSES = "leakage-adds", "leakage-opposes"


@dataclass(frozen=True, slots=True)
class Inspected:
    """What is certain: whether the type fits the equipment, whether the leakage is too much.

    `causes` are those that may be met at all. What was looked at and seen counts as certain
    too. `lots` are the numbers of one device that every cause is tried with beside its own
    draws, so that none is called unlikely only because no draw lies near enough to many exact
    readings.
    """

    causes: frozenset[str]
    type_fits: bool
    leaks_too_much: bool
    lots: Lots


def settled(shares: Mapping[str, float], inspected: Inspected) -> dict[str, float]:
    """Return the shares of the causes that inspection leaves, summing to 1.

    A device that would be in good order is of too low a type where its type does not fit,
    and is under leakage where that is too much. One whose type fits is of no too low a type.
    """
    met = inspected.causes | {READING_WRONG}
    found = {code: share for code, share in shares.items() if code in met}
    if inspected.type_fits:
        _drop(found, TOO_LOW, BLINDED)
    elif TOO_LOW in found:
        found[TOO_LOW] += _drop(found, *SOUND)
    else:
        _drop(found, *SOUND)
    if inspected.leaks_too_much:
        sound = _drop(found, *SOUND)
        apart = {ADDS: STATED.leakage_adds, OPPOSES: STATED.leakage_opposes}
        whole = sum(part for code, part in apart.items() if code in found)
        for code, part in apart.items():
            if code in found:
                found[code] += sound * part / whole
    whole = sum(found.values())
    return {code: share / whole for code, share in found.items() if share > 0.0}


def _drop(shares: dict[str, float], *codes: str) -> float:
    """Take some causes out, and return the share they had."""
    return sum(shares.pop(code, 0.0) for code in codes)
