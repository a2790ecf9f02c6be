"""An arrangement of devices and loads judged as a whole: DC, own devices, and selectivity."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from checkers.domain.verdicts import Finding, Result
from checkers.judgement.series.answer import answer_devices, answer_pairs
from checkers.judgement.series.arrangement import Arrangement
from checkers.judgement.series.change.least_change import Mend, least_changes
from checkers.judgement.series.conditions import conditions
from checkers.judgement.series.dc.fitness import judge_fitness
from checkers.judgement.series.dc.fitness_words import fitness_finding
from checkers.judgement.series.dc.flow import flow_through
from checkers.judgement.series.device_type.by_code import code_findings
from checkers.judgement.series.device_type.own_device import own_device_findings
from checkers.judgement.series.layout import lay_out
from checkers.judgement.series.selectivity.fault_levels import Supply
from checkers.judgement.series.selectivity.selectivity import Selectivity, pairs, selectivity
from checkers.judgement.series.selectivity.words import selectivity_finding
from checkers.wording.book import part

Places = tuple[int, int]
"""The places of two devices in series, the upper first."""


def judge_series(arrangement: Arrangement, supply: Supply, wanted: bool | None) -> Result:
    """Judge an arrangement as a whole, and look for the least change that mends it.

    Inputs: the arrangement; what decides the current of a fault; whether only the lower of two
    devices must open, or None where nobody said: then a delay tells.
    """
    through = flow_through(arrangement)
    judged = judge_fitness(arrangement, through)
    ways = least_changes(arrangement)
    mend = ways[0].sentence if ways else part("series.no-change-found")
    found = _selectivities(arrangement, supply)
    fitness = [
        fitness_finding(arrangement, place, through[place], one, mend)
        for place, one in enumerate(judged)
    ]
    ruled = [*code_findings(arrangement, mend), *own_device_findings(arrangement, mend)]
    return Result(
        findings=[*fitness, *ruled, *_selectivity_findings(arrangement, found, wanted)],
        answer={
            "drawing": lay_out(arrangement, through, judged),
            "devices": answer_devices(arrangement, through, judged),
            "pairs": answer_pairs(arrangement, found),
            **_mends(ways),
        },
        cautions=tuple(_cautions(arrangement, ways)),
    )


def _selectivities(arrangement: Arrangement, supply: Supply) -> dict[Places, Selectivity]:
    devices = arrangement.devices
    return {
        (upper, lower): selectivity(devices[upper].device, devices[lower].device, supply)
        for upper, lower in pairs(arrangement)
    }


def _selectivity_findings(
    arrangement: Arrangement, found: Mapping[Places, Selectivity], wanted: bool | None
) -> list[Finding]:
    if wanted is False:
        return []
    return [selectivity_finding(arrangement, places, one, wanted) for places, one in found.items()]


def _mends(ways: Sequence[Mend]) -> dict[str, Any]:
    if not ways:
        return {}
    least, *others = ways
    also = {"other_ways": [way.sentence for way in others]} if others else {}
    return {"least_change": list(least.words), **also}


def _cautions(arrangement: Arrangement, ways: Sequence[Mend]) -> Iterator[str]:
    yield from conditions(arrangement)
    if any(way.moves for way in ways):
        yield part("series.loses")
