"""The finding on two devices in series, in words."""

from __future__ import annotations

from math import isinf

from checkers.domain.limits.rows import citations
from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.series.arrangement import Arrangement, PlacedDevice
from checkers.judgement.series.selectivity.pair_times import PairTimes
from checkers.judgement.series.selectivity.selectivity import Selectivity

MAKE_IT_SO = "To keep the upper closed: {ratio} times the rating or more, and type S or a delay."
IF_NOT_WANTED = " If both may open, say that selectivity is not wanted."
NO_RATING = "Read IΔn on both devices."
ASK_MAKER = "Compare the makers' time-current curves."
CARRIED = (
    " The standard fixes the upper's delay at twice its rating: that it holds at greater "
    "currents is common practice, and its maker's curve decides."
)


def selectivity_finding(
    arrangement: Arrangement, places: tuple[int, int], found: Selectivity, wanted: bool | None
) -> Finding:
    """Return the finding on two devices; `wanted` tells whether it was to be selective."""
    upper, lower = places
    above, below = arrangement.devices[upper], arrangement.devices[lower]
    outcome = found.outcome(wanted)
    return Finding(
        about=f"{below.id} before {above.id}",
        outcome=outcome,
        says=_says(above, below, found),
        judges=Judges.SELECTIVITY,
        measured=_measured(found),
        measured_as=MeasuredAs.CALCULATED,
        limit=_limit(found),
        do_next=_do_next(found, outcome, wanted),
        device=below.id,
        field=_field(arrangement, upper, lower),
        sources=_sources(found),
    )


def _says(above: PlacedDevice, below: PlacedDevice, found: Selectivity) -> str:
    if found.ratio is None:
        return "Which opens first depends on both ratings, and one is not given."
    parts = [_verdict_words(above, below, found), _ratio_words(found), _time_words(found)]
    return " ".join(part for part in parts if part)


def _verdict_words(above: PlacedDevice, below: PlacedDevice, found: Selectivity) -> str:
    if found.selective:
        return f"Selective: {below.id} opens first, {above.id} stays closed."
    if found.selective is None:
        return "Whether the lower opens first cannot be told from the tables."
    return f"Not selective: a fault below {below.id} may open {above.id} as well, or alone."


def _ratio_words(found: Selectivity) -> str:
    ratio, least = found.ratio or 0.0, found.least_ratio
    words = f"The ratio of the ratings is {format_number(ratio)}"
    if least is None:
        return f"{words}; the code chosen asks for none."
    enough = "enough" if found.ratio_kept else "too little"
    return f"{words}: {enough}, {format_number(least)} is asked for."


def _time_words(found: Selectivity) -> str:
    level, fault = found.level, found.fault
    if level is None or fault is None:
        return "The current of a real fault is not known here."
    at = f"At {format_quantity(level.current, 'mA', 3)} ({fault.origin})"
    if found.disproven and not found.times_known:
        return f"{at} the lower {held_words(level.lower_holds)}, the upper {hold_words(level)}."
    if not found.times_known:
        return f"{at} no table gives {_untold(level)}."
    within = format_quantity(level.opens_within or 0.0, "ms")
    return f"{at} the lower opens within {within}, the upper {hold_words(level)}.{_reach(found)}"


def hold_words(level: PairTimes) -> str:
    """Return in words for how long the upper holds."""
    return held_words(level.holds_for)


def held_words(time: float | None) -> str:
    """Return in words for how long a device holds [ms]."""
    if time is None:
        return "holds for a time its maker states"
    if isinf(time):
        return "must not operate"
    if not time:
        return "has no delay and may open at once"
    return f"holds for {format_quantity(time, 'ms')} at least"


def _untold(level: PairTimes) -> str:
    if level.opens_within is None and level.holds_for is None:
        return "either time"
    return "the lower's break time" if level.opens_within is None else "the upper's delay"


def _reach(found: Selectivity) -> str:
    carried = CARRIED if found.level is not None and found.level.carried else ""
    if found.from_current is None or found.level is None:
        return carried
    start = format_quantity(found.from_current, "mA", 3)
    return f" The tables prove it from {start} up; a smaller fault may open both.{carried}"


def _measured(found: Selectivity) -> str:
    ratio = "" if found.ratio is None else f"ratio {format_number(found.ratio)}"
    level = found.level
    if level is None or level.opens_within is None:
        return ratio
    return f"{ratio}; opens within {format_quantity(level.opens_within, 'ms')}"


def _limit(found: Selectivity) -> str:
    ratio = "" if found.least_ratio is None else f"ratio ≥ {format_number(found.least_ratio)}"
    level = found.level
    if level is None or level.holds_for is None or isinf(level.holds_for):
        return ratio
    return "; ".join(part for part in (ratio, f"upper {hold_words(level)}") if part)


def _do_next(found: Selectivity, outcome: Outcome, wanted: bool | None) -> str:
    if outcome is Outcome.PASS:
        return ""
    if found.ratio is None:
        return NO_RATING
    if found.selective is None:
        return ASK_MAKER
    words = MAKE_IT_SO.format(ratio=format_number(found.least_ratio or found.ratio))
    return words + (IF_NOT_WANTED if wanted is None else "")


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
