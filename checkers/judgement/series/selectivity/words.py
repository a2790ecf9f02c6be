"""The finding on two devices in series."""

from __future__ import annotations

from math import isinf

from checkers.domain.limits.rows import citations
from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Finding, Judges, MeasuredAs
from checkers.judgement.series.arrangement import Arrangement
from checkers.judgement.series.selectivity.pair_times import PairTimes
from checkers.judgement.series.selectivity.selectivity import Selectivity
from checkers.wording.book import part
from checkers.wording.finding import finding, with_parts


def selectivity_finding(
    arrangement: Arrangement, places: tuple[int, int], found: Selectivity, wanted: bool | None
) -> Finding:
    """Return the finding on two devices; `wanted` tells whether it was to be selective."""
    upper, lower = (arrangement.devices[place].id for place in places)
    ratio = format_number(found.least_ratio or found.ratio or 0.0)
    told = finding(
        _code(found, wanted),
        found.outcome(wanted),
        Judges.SELECTIVITY,
        {"lower": lower, "upper": upper, "ratio": ratio},
        measured=_measured(found),
        measured_as=MeasuredAs.CALCULATED,
        limit=_limit(found),
        device=lower,
        field=_field(arrangement, *places),
        sources=_sources(found),
    )
    return told if found.ratio is None else with_parts(told, _ratio_words(found), *_times(found))


def _code(found: Selectivity, wanted: bool | None) -> str:
    if found.ratio is None:
        return "series.both-ratings-needed"
    if found.selective is None:
        return "series.selectivity-not-told"
    if found.selective:
        return "series.selective"
    return "series.not-selective-perhaps-not-wanted" if wanted is None else "series.not-selective"


def _ratio_words(found: Selectivity) -> str:
    ratio = format_number(found.ratio or 0.0)
    if found.least_ratio is None:
        return part("series.ratio-alone", ratio=ratio)
    code = "series.ratio-enough" if found.ratio_kept else "series.ratio-too-little"
    return part(code, ratio=ratio, least=format_number(found.least_ratio))


def _times(found: Selectivity) -> list[str]:
    """Return in sentences the times at a real fault, and how far that reaches."""
    level, fault = found.level, found.fault
    if level is None or fault is None:
        return [part("series.fault-not-known")]
    facts = {
        "current": format_quantity(level.current, "mA", 3),
        "origin": fault.origin,
        "lower": held_words(level.lower_holds),
        "upper": held_words(level.holds_for),
        "time": format_quantity(level.opens_within or 0.0, "ms"),
    }
    if found.times_known:
        return [part("series.opens-within", **facts), *_reach(found, level)]
    return [part("series.lower-holds-longer" if found.disproven else _untold(level), **facts)]


def held_words(time: float | None) -> str:
    """Return in words for how long a device holds [ms]."""
    if time is None:
        return part("series.holds-as-stated")
    if isinf(time):
        return part("series.must-not-operate")
    if not time:
        return part("series.may-open-at-once")
    return part("series.holds-for", time=format_quantity(time, "ms"))


def _untold(level: PairTimes) -> str:
    if level.opens_within is None and level.holds_for is None:
        return "series.no-time"
    return "series.no-break-time" if level.opens_within is None else "series.no-delay-known"


def _reach(found: Selectivity, level: PairTimes) -> list[str]:
    start = found.from_current
    proven = [] if start is None else [format_quantity(start, "mA", 3)]
    return [
        *(part("series.proven-from", start=one) for one in proven),
        *([part("series.delay-carried")] if level.carried else []),
    ]


def _measured(found: Selectivity) -> str:
    if found.ratio is None:
        return ""
    ratio, level = format_number(found.ratio), found.level
    if level is None or level.opens_within is None:
        return part("series.ratio", ratio=ratio)
    time = format_quantity(level.opens_within, "ms")
    return part("series.ratio-with-time", ratio=ratio, time=time)


def _limit(found: Selectivity) -> str:
    least, level = found.least_ratio, found.level
    told = [] if least is None else [part("series.least-ratio", ratio=format_number(least))]
    if level is not None and level.holds_for is not None and not isinf(level.holds_for):
        told.append(part("series.upper-holds", holds=held_words(level.holds_for)))
    return "; ".join(told)


def _field(arrangement: Arrangement, upper: int, lower: int) -> str:
    missing = [
        place
        for place in (upper, lower)
        if arrangement.devices[place].device.rated_residual_current is None
    ]
    return f"devices[{missing[0]}].rated_residual_current" if missing else f"devices[{upper}].delay"


def _sources(found: Selectivity) -> tuple[Citation, ...]:
    level, fault = found.level, found.fault
    cited = [*citations(found.ratio_row), *(citations(*level.rows) if level else ())]
    cited += fault.sources if fault else ()
    if level is not None and level.carried:
        cited.append(CONSTANTS["delay_above_twice"].citation)
    return tuple(dict.fromkeys(cited))
