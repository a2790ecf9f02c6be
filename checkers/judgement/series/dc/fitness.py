"""Is each device of an arrangement fit for the smooth DC that can flow through it?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from checkers.domain.device.device import DeviceType
from checkers.domain.verdicts import Outcome, worst
from checkers.judgement.equipment.type_fit import Fit
from checkers.judgement.series.arrangement import Arrangement
from checkers.judgement.series.dc.limits import DCLimits, dc_limits
from checkers.judgement.series.dc.sources import Bounds
from checkers.judgement.series.dc.through import Through
from checkers.judgement.series.device_type.type_fit import protected_by, type_fit

HAIR = 1e-9
"""Smooth DC [mA] that binary fractions may add to a sum of figures as typed."""


class Why(StrEnum):
    """What decides the fitness of a device."""

    MONITOR = "monitor"
    DETECTION = "detection"
    DETECTION_ALONE = "detection-alone"
    TYPE = "type"
    RATING = "rating"
    NO_LOADS = "no-loads"
    NO_LIMIT = "no-limit"
    SENSES = "senses"
    BEARS = "bears"


@dataclass(frozen=True, slots=True)
class Fitness:
    """How one device stands: the outcome, what decided it, and the loads it does not suit."""

    outcome: Outcome
    why: Why
    limits: DCLimits
    dc: Outcome = Outcome.CANNOT_SAY
    above_type_b: bool = False
    misfits: tuple[tuple[int, Fit], ...] = ()


def judge_fitness(arrangement: Arrangement, through: Sequence[Through]) -> list[Fitness]:
    """Return the fitness of each device, by its place, for the DC through it [mA]."""
    return [judge_one(arrangement, place, one) for place, one in enumerate(through)]


def judge_one(arrangement: Arrangement, place: int, through: Through) -> Fitness:
    """Return the fitness of one device for the DC through it [mA]."""
    device = arrangement.devices[place].device
    limits = dc_limits(device, arrangement.code, arrangement.day)
    undecided = _undecided(arrangement, place, through, limits)
    if undecided is not None:
        return Fitness(Outcome.CANNOT_SAY, undecided, limits)
    if device.detects_dc:
        return Fitness(Outcome.PASS, Why.DETECTION, limits, Outcome.PASS)
    dc = Outcome.PASS if limits.senses else compare_dc(through.bounds, limits)
    above_type_b = through.type_b_below and not limits.senses
    fits = [(one, type_fit(arrangement, place, one)) for one in protected_by(arrangement, place)]
    misfits = tuple((one, fit) for one, fit in fits if fit and fit.outcome is not Outcome.PASS)
    outcomes = [dc, *(fit.outcome for _, fit in misfits)]
    if above_type_b:
        outcomes.append(Outcome.FAIL)
    why = Why.SENSES if limits.senses else Why.BEARS
    return Fitness(worst(outcomes), why, limits, dc, above_type_b, misfits)


def _undecided(
    arrangement: Arrangement, place: int, through: Through, limits: DCLimits
) -> Why | None:
    """Return why nothing can be said of a device, or None where something can."""
    device = arrangement.devices[place].device
    if not device.opens:
        return Why.MONITOR
    if device.detects_dc:
        return None if _beside_an_rcd(arrangement, place) else Why.DETECTION_ALONE
    if device.type == DeviceType.UNKNOWN:
        return Why.TYPE
    if limits.senses:
        return Why.RATING if limits.opens_at is None else None
    if not arrangement.shape.feeds[place] and not through.parts:
        return Why.NO_LOADS
    return Why.NO_LIMIT if limits.bears is None else None


def compare_dc(flowing: Bounds, limits: DCLimits) -> Outcome:
    """Return how the smooth DC through a device compares with what it bears."""
    bears = (limits.bears or 0.0) + HAIR
    low, high = flowing
    if low > bears:
        return Outcome.FAIL
    return Outcome.PASS if high <= bears else Outcome.CANNOT_SAY


def _beside_an_rcd(arrangement: Arrangement, place: int) -> bool:
    """Tell whether a device that protects by itself stands above or below 6 mA detection."""
    near = [*arrangement.above([place]), *arrangement.below(place)]
    return any(arrangement.devices[one].is_rcd for one in near)
