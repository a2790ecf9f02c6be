"""The finding on one device of an arrangement, in words."""

from __future__ import annotations

from math import isinf

from checkers.domain.device.device import Device
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import citations
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Numbers, Outcome
from checkers.judgement.equipment.type_fit import Fit
from checkers.judgement.series.arrangement import Arrangement
from checkers.judgement.series.dc.fitness import Fitness, Why
from checkers.judgement.series.dc.flow_words import amount, flow_sources, flow_words
from checkers.judgement.series.dc.through import Through
from checkers.judgement.series.device_type.type_fit import equipment_in_place, fit_words

RULES = ("type_b_below_narrower", "type_b_below_narrower_for_vehicles")
NONE_DECLARED = "none declared"
UNDECIDED = {
    Why.MONITOR: "A monitor warns and does not trip: it is not judged as protection.",
    Why.DETECTION_ALONE: "6 mA detection works beside an RCD: none stands above or below it here.",
    Why.TYPE: "How much smooth DC it bears depends on its type, which is not given.",
    Why.RATING: "At how much smooth DC it opens depends on its rating, which is not given.",
    Why.NO_LOADS: "No equipment is named below it, so what can flow through it is not known.",
    Why.NO_LIMIT: "The code chosen gives no figure of smooth DC for this type.",
}
TO_DO = {
    Why.DETECTION_ALONE: "Name the RCD in series with it.",
    Why.TYPE: "Read the type symbol on the device.",
    Why.RATING: "Read IΔn on the device.",
    Why.NO_LOADS: "Name the equipment on it.",
}
FIELDS = {Why.MONITOR: "form", Why.RATING: "rated_residual_current"}
NEVER_BELOW = (
    "A type B stands below it, which lets up to twice its rating pass whatever it feeds today: "
    "none may stand below a type AC, A or F."
)


def fitness_finding(
    arrangement: Arrangement, place: int, through: Through, fitness: Fitness, mend: str
) -> Finding:
    """Return the finding on one device; `mend` is the least change of the whole, in words."""
    device = arrangement.devices[place]
    bad = fitness.outcome is Outcome.FAIL
    return Finding(
        about=f"smooth DC through {device.id}",
        outcome=fitness.outcome,
        says=_says(arrangement, place, through, fitness),
        judges=Judges.FITNESS_FOR_DC,
        measured=amount(through.bounds) if fitness.why not in UNDECIDED else "",
        measured_as=MeasuredAs.CALCULATED,
        limit=_limit(fitness),
        do_next=mend if bad else _do_next(fitness),
        device=device.id,
        field=f"devices[{place}].{FIELDS.get(fitness.why, 'type')}",
        sources=_sources(arrangement, through, fitness),
        numbers=_numbers(through, fitness),
    )


def _numbers(through: Through, fitness: Fitness) -> Numbers | None:
    """Return the greatest smooth DC against what the device bears, where both are known."""
    limits, most = fitness.limits, through.bounds.high
    opens = limits.senses and limits.opens_at is not None
    if fitness.why in UNDECIDED or opens or not limits.bears or not most or isinf(most):
        return None
    return Numbers("mA", most, None, most, at_most=limits.bears)


def _limit(fitness: Fitness) -> str:
    limits = fitness.limits
    if limits.senses and limits.opens_at is not None:
        return f"opens at {format_quantity(limits.opens_at, 'mA')}"
    if limits.bears is None:
        return ""
    return str(Limit("mA", at_most=limits.bears)) if limits.bears else NONE_DECLARED


def _says(arrangement: Arrangement, place: int, through: Through, fitness: Fitness) -> str:
    if fitness.why in UNDECIDED:
        return UNDECIDED[fitness.why]
    device = arrangement.devices[place].device
    if fitness.why is Why.DETECTION:
        return f"It senses smooth DC and opens its supply {_limit(fitness).removeprefix('opens ')}."
    senses = fitness.why is Why.SENSES
    own = _senses(device, through, fitness) if senses else _bears_words(device, fitness)
    parts = [flow_words(arrangement, place, through), own]
    if fitness.above_type_b:
        parts.append(NEVER_BELOW)
    parts += [_misfit_words(arrangement, device, *misfit) for misfit in fitness.misfits]
    return " ".join(part for part in parts if part)


def _misfit_words(arrangement: Arrangement, device: Device, number: int, fit: Fit) -> str:
    load = arrangement.loads[number].name
    why = fit_words(fit, equipment_in_place(arrangement, number))
    if fit.outcome is Outcome.FAIL:
        return f"Type {device.type} does not suit {load}: {why}."
    return f"Whether type {device.type} suits {load} is open: {why}."


def _senses(device: Device, through: Through, fitness: Fitness) -> str:
    limits = fitness.limits
    opens = format_quantity(limits.opens_at or 0.0, "mA")
    words = f"Type {device.type} senses smooth DC: it opens at {opens} at the latest"
    if limits.bears is None:
        return f"{words}."
    bears = format_quantity(limits.bears, "mA")
    beyond = limits.bears < through.bounds.high
    more = ": between the two nothing is declared for AC" if beyond else ""
    return f"{words}. Its limits for AC are declared with up to {bears} of smooth DC{more}."


def _bears_words(device: Device, fitness: Fitness) -> str:
    bears = fitness.limits.bears
    known = (
        f"Type {device.type} bears {format_quantity(bears, 'mA')}"
        if bears
        else f"No smooth DC is declared for type {device.type}"
    )
    return {
        Outcome.PASS: f"{known}.",
        Outcome.FAIL: f"{known}: more can blind it, and its button may still work.",
    }.get(fitness.dc, f"{known}: whether more can flow depends on what is not said.")


def _do_next(fitness: Fitness) -> str:
    if fitness.why in TO_DO:
        return TO_DO[fitness.why]
    if fitness.outcome is Outcome.CANNOT_SAY and fitness.misfits:
        return "Ask the maker of the equipment, in writing, or look it up in its instructions."
    return ""


def _sources(arrangement: Arrangement, through: Through, fitness: Fitness) -> tuple[Citation, ...]:
    """Return where the limit stands, and where the amounts come from."""
    limits = fitness.limits
    cited = [*citations(limits.bears_row, limits.opens_row), *flow_sources(arrangement, through)]
    for number, _ in fitness.misfits:
        cited += arrangement.loads[number].equipment.need.sources
    if fitness.above_type_b:
        cited += [CONSTANTS[key].citation for key in RULES]
    return tuple(dict.fromkeys(cited))
