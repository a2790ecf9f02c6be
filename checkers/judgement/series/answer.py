"""What a series answers in figures: each device, and each two in series."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import isinf
from typing import Any

from checkers.domain.verdicts import Figure
from checkers.judgement.limits.safe_rounding import rounded_up
from checkers.judgement.series.arrangement import Arrangement
from checkers.judgement.series.dc.fitness import Fitness, Why
from checkers.judgement.series.dc.flow_words import amount
from checkers.judgement.series.dc.through import Through
from checkers.judgement.series.selectivity.selectivity import Selectivity
from checkers.wording.book import part

DIGITS = 6
SELECTIVE = {True: "series.yes", False: "series.no", None: "series.not-known"}
UNTOLD = frozenset({Why.NO_LOADS, Why.RATING})


def answer_devices(
    arrangement: Arrangement, through: Sequence[Through], judged: Sequence[Fitness]
) -> list[dict[str, Any]]:
    """Return for each device the DC [mA] through it unseen, what it tolerates, the verdict."""
    return [
        {
            "id": device.id,
            "greatest_unseen_dc": _greatest(through[place], judged[place]),
            "tolerates": _tolerates(arrangement, place, judged[place]),
            "verdict": judged[place].outcome.value,
            **_with_ordinary(through[place], judged[place]),
        }
        for place, device in enumerate(arrangement.devices)
    ]


def answer_pairs(
    arrangement: Arrangement, found: Mapping[tuple[int, int], Selectivity]
) -> list[dict[str, Any]]:
    """Return for each two devices in series the ratio, and the times [ms] at a real fault."""
    return [_pair(arrangement, places, one) for places, one in found.items()]


def _greatest(through: Through, fitness: Fitness) -> Figure | str:
    bounds = through.bounds
    if fitness.why in UNTOLD:
        return part("series.not-known")
    return amount(bounds) if isinf(bounds.high) else Figure(rounded_up(bounds.high, DIGITS), "mA")


def _with_ordinary(through: Through, fitness: Fitness) -> dict[str, Figure]:
    """Return what one piece of ordinary electronics beside the rest makes of it: a remark."""
    most = through.with_ordinary
    if most is None or isinf(most) or fitness.limits.senses:
        return {}
    return {"with_ordinary_electronics": Figure(rounded_up(most, DIGITS), "mA")}


def _tolerates(arrangement: Arrangement, place: int, fitness: Fitness) -> Figure | str:
    limits = fitness.limits
    if arrangement.devices[place].device.detects_dc:
        return _current(limits.opens_at)
    return _current(limits.bears)


def _current(current: float | None) -> Figure | str:
    return part("series.not-known") if current is None else Figure(current, "mA")


def _pair(arrangement: Arrangement, places: tuple[int, int], found: Selectivity) -> dict[str, Any]:
    upper, lower = places
    level = found.level
    return {
        "upper": arrangement.devices[upper].id,
        "lower": arrangement.devices[lower].id,
        "ratio": None if found.ratio is None else round(found.ratio, 2),
        "fault_current": None if found.fault is None else Figure(found.fault.current, "mA"),
        "lower_opens_within": _time(level.opens_within) if level else None,
        "upper_holds_for": _time(level.holds_for) if level else None,
        "proven_from": None if found.from_current is None else Figure(found.from_current, "mA"),
        "selective": part(SELECTIVE[found.selective]),
    }


def _time(time: float | None) -> Figure | str | None:
    if time is None:
        return None
    return part("series.must-not-operate") if isinf(time) else Figure(time, "ms")
