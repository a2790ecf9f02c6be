"""Does a device type suit a piece of equipment? The one judgement of it, in facts."""

from __future__ import annotations

from enum import StrEnum
from functools import lru_cache
from typing import NamedTuple

from checkers.domain.loads.kinds import Also
from checkers.domain.verdicts import Outcome
from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.equipment.type_order import covers

SENSES_SMOOTH_DC = "B"
HELPED_BY_DETECTION = "A"


class Why(StrEnum):
    """What decides how a type suits equipment."""

    SEES_ALL = "sees-all"
    CONDITION_MET = "condition-met"
    MAKER_ASKS_MORE = "maker-asks-more"
    CONTRADICTED = "contradicted"
    CONDITION_OPEN = "condition-open"
    DETECTION_ELSEWHERE = "detection-elsewhere"
    CONDITION_NOT_MET = "condition-not-met"
    TOO_NARROW = "too-narrow"


class Fit(NamedTuple):
    """How a type suits equipment, what decides it, and the conditions it turns on."""

    outcome: Outcome
    why: Why
    conditions: tuple[Also, ...] = ()


@lru_cache(maxsize=1024)
def fit_of(kind: str, equipment: Equipment) -> Fit:
    """Return how a known device type suits equipment, by its circuit, maker and conditions.

    Result: a pass for a type that the circuit calls for, or a narrower one whose condition is
    met; cannot-say where a condition is open or the maker contradicts the circuit; else a fail.
    """
    need, serving = equipment.need, [one for one in equipment.need.also if kind in one.types]
    if covers(kind, equipment.least_type):
        sees_all = covers(kind, need.type)
        why = Why.SEES_ALL if sees_all else Why.CONDITION_MET
        return Fit(Outcome.PASS, why, equipment.met)
    if equipment.maker_type and not covers(kind, equipment.maker_type):
        return Fit(Outcome.FAIL, Why.MAKER_ASKS_MORE)
    if equipment.contradicted:
        return Fit(Outcome.CANNOT_SAY, Why.CONTRADICTED)
    unknown = tuple(one for one in serving if equipment.lets_serve(one, kind) is None)
    if unknown:
        return Fit(Outcome.CANNOT_SAY, Why.CONDITION_OPEN, unknown)
    if _detected_elsewhere(kind, equipment):
        return Fit(Outcome.CANNOT_SAY, Why.DETECTION_ELSEWHERE)
    why = Why.CONDITION_NOT_MET if serving else Why.TOO_NARROW
    return Fit(Outcome.FAIL, why, tuple(serving))


def _detected_elsewhere(kind: str, equipment: Equipment) -> bool:
    """Tell whether 6 mA detection guards equipment that its standard is not made for.

    It keeps smooth DC from a type A or F, and does nothing for the mixed frequencies of a
    type F.
    """
    guarded = bool(equipment.detection) and not equipment.asks_for_detection
    smooth = covers(equipment.need.type, SENSES_SMOOTH_DC)
    return guarded and smooth and covers(kind, HELPED_BY_DETECTION)
