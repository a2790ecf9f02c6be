"""How much smooth DC flows through a device, where it comes from, and where that stands."""

from __future__ import annotations

from math import isinf

from checkers.domain.known_figures import KNOWN
from checkers.domain.quantities import format_quantity
from checkers.domain.sources import Citation
from checkers.judgement.reading_words import citations
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.dc_flow import Source, Through
from checkers.judgement.series.dc_limits import dc_limits
from checkers.judgement.series.dc_sources import Bounds

FAULT_LOOP = "limited only by the fault loop"
MANY = 4


def amount(bounds: Bounds) -> str:
    """Return bounds as words: up to 12 mA, none, or limited only by the fault loop."""
    if isinf(bounds.high):
        return FAULT_LOOP
    return f"up to {format_quantity(bounds.high, 'mA')}" if bounds.high else "none"


def flow_words(arrangement: Arrangement, through: Through) -> str:
    """Return in a sentence how much can flow through a device, and where it comes from."""
    bounds = through.bounds
    if not bounds.high:
        return "No smooth DC is to be expected through it from what is listed."
    if isinf(bounds.high):
        return f"The smooth DC through it is {FAULT_LOOP}{_from(arrangement, through)}."
    return (
        f"Up to {format_quantity(bounds.high, 'mA')} of smooth DC can flow through it unseen"
        f"{_from(arrangement, through)}."
    )


def _from(arrangement: Arrangement, through: Through) -> str:
    """Return in brackets where it comes from, the greatest first."""
    parts = sorted(through.parts.items(), key=lambda part: -part[1].high)
    if not parts:
        return " (ordinary electronics: at most that for each piece)"
    words = [f"{_name(source, arrangement)}{_share(bounds)}" for source, bounds in parts[:MANY]]
    more = [f"{len(parts) - MANY} more"] if len(parts) > MANY else []
    limited = sum(bounds.high for _, bounds in parts) > through.bounds.high
    above = "; a device that senses it opens there" if limited else ""
    return f" ({'; '.join([*words, *more])}{above})"


def _name(source: Source, arrangement: Arrangement) -> str:
    kind, place = source
    if kind == "device":
        return f"through {arrangement.devices[place].id}"
    load = arrangement.loads[place]
    return f"{load.count} × {load.name}" if load.count > 1 else load.name


def _share(bounds: Bounds) -> str:
    if isinf(bounds.high):
        return ": without a limit of its own"
    return f": {format_quantity(bounds.high, 'mA')}"


def flow_sources(arrangement: Arrangement, through: Through) -> list[Citation]:
    """Return where the amounts stand that flow through a device."""
    return [one for source in through.parts for one in _sources_of(source, arrangement)]


def _sources_of(source: Source, arrangement: Arrangement) -> tuple[Citation, ...]:
    kind, place = source
    if kind == "device":
        device = arrangement.devices[place].device
        return citations(dc_limits(device, arrangement.code, arrangement.day).opens_row)
    load = arrangement.loads[place]
    if load.declared is not None:
        return ()
    if load.protection == DCProtection.TYPE_B:
        return (KNOWN["built_in_type_b_rating"].citation,)
    return load.equipment.need.sources
