"""The finding on one device of an arrangement."""

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
from checkers.wording.book import part
from checkers.wording.finding import finding, with_parts

RULES = ("type_b_below_narrower", "type_b_below_narrower_for_vehicles")
UNDECIDED = {
    Why.MONITOR: "series.monitor-not-judged",
    Why.DETECTION_ALONE: "series.detection-alone",
    Why.TYPE: "series.type-missing",
    Why.RATING: "series.rating-missing",
    Why.NO_LOADS: "series.equipment-missing",
    Why.NO_LIMIT: "series.no-figure-for-type",
}
DECIDED = {
    Why.DETECTION: "series.detection-opens",
    Why.SENSES: "series.senses-smooth-dc",
    Why.BEARS: "series.bears-smooth-dc",
}
BEARS = {
    Outcome.PASS: ("series.bears", "series.bears-none"),
    Outcome.FAIL: ("series.bears-less", "series.bears-none-some-flows"),
    Outcome.CANNOT_SAY: ("series.bears-perhaps-less", "series.bears-none-some-may-flow"),
}
FIELDS = {Why.MONITOR: "form", Why.RATING: "rated_residual_current"}


def fitness_finding(
    arrangement: Arrangement, place: int, through: Through, fitness: Fitness, mend: str
) -> Finding:
    """Return the finding on one device; `mend` is the least change of the whole, in words."""
    device = arrangement.devices[place]
    flow = flow_words(arrangement, place, through)
    opens_at = format_quantity(fitness.limits.opens_at or 0.0, "mA")
    own = _own_words(device.device, through, fitness)
    found = finding(
        _code(fitness),
        fitness.outcome,
        Judges.FITNESS_FOR_DC,
        {"device": device.id, "flow": flow, "own": own, "opens_at": opens_at},
        measured=amount(through.bounds) if fitness.why not in UNDECIDED else "",
        measured_as=MeasuredAs.CALCULATED,
        limit=_limit(fitness),
        device=device.id,
        field=f"devices[{place}].{FIELDS.get(fitness.why, 'type')}",
        sources=_sources(arrangement, through, fitness),
        numbers=_numbers(through, fitness),
        **_do_next(fitness, mend),
    )
    below = [part("series.never-below")] if fitness.above_type_b else []
    misfits = (_misfit_words(arrangement, device.device, *one) for one in fitness.misfits)
    return with_parts(found, *below, *misfits)


def _code(fitness: Fitness) -> str:
    """Return what decides a device's fitness, the worst first."""
    if fitness.why in UNDECIDED:
        return UNDECIDED[fitness.why]
    if fitness.dc is Outcome.FAIL:
        return "series.too-much-smooth-dc"
    if fitness.above_type_b:
        return "series.type-b-below"
    if fitness.outcome is Outcome.FAIL:
        return "series.type-does-not-suit"
    if fitness.dc is Outcome.CANNOT_SAY:
        return "series.smooth-dc-not-told"
    return "series.type-may-not-suit" if fitness.misfits else DECIDED[fitness.why]


def _do_next(fitness: Fitness, mend: str) -> dict[str, str]:
    """Return what to do next where more than the code of the finding decides it."""
    if fitness.outcome is Outcome.FAIL:
        return {"do_next": mend}
    open_still = fitness.outcome is Outcome.CANNOT_SAY and fitness.misfits
    return {"do_next": part("series.ask-equipment-maker")} if open_still else {}


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
        return part("series.opens-at", current=format_quantity(limits.opens_at, "mA"))
    return "" if limits.bears is None else bearable(limits.bears)


def bearable(bears: float) -> str:
    """Return the smooth DC [mA] that is declared for a type, in words."""
    return str(Limit("mA", at_most=bears)) if bears else part("series.none-declared")


def _misfit_words(arrangement: Arrangement, device: Device, number: int, fit: Fit) -> str:
    load = arrangement.loads[number].name
    why = fit_words(fit, equipment_in_place(arrangement, number))
    code = "series.does-not-suit" if fit.outcome is Outcome.FAIL else "series.suits-perhaps"
    return part(code, type=device.type, load=load, why=why)


def _own_words(device: Device, through: Through, fitness: Fitness) -> str:
    """Return in sentences what the device does with smooth DC."""
    limits = fitness.limits
    facts = {
        "type": device.type,
        "opens_at": format_quantity(limits.opens_at or 0.0, "mA"),
        "bears": format_quantity(limits.bears or 0.0, "mA"),
    }
    if fitness.why is not Why.SENSES:
        bears, bears_none = BEARS[fitness.dc]
        return part(bears if limits.bears else bears_none, **facts)
    if limits.bears is None:
        return part("series.senses", **facts)
    beyond = limits.bears < through.bounds.high
    return part("series.senses-beyond" if beyond else "series.senses-bears", **facts)


def _sources(arrangement: Arrangement, through: Through, fitness: Fitness) -> tuple[Citation, ...]:
    """Return where the limit stands, and where the amounts come from."""
    limits = fitness.limits
    cited = [*citations(limits.bears_row, limits.opens_row), *flow_sources(arrangement, through)]
    for number, _ in fitness.misfits:
        cited += arrangement.loads[number].equipment.need.sources
    if fitness.above_type_b:
        cited += [CONSTANTS[key].citation for key in RULES]
    return tuple(dict.fromkeys(cited))
