"""How much smooth DC flows through a device, where it comes from, and where that stands."""

from __future__ import annotations

from math import isinf

from checkers.domain.device.device import DeviceType
from checkers.domain.limits.rows import citations
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.judgement.equipment.dc_by_statement import promised_by
from checkers.judgement.equipment.own_interrupter import interrupter_on_dc
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.dc.limits import dc_limits
from checkers.judgement.series.dc.sources import Bounds
from checkers.judgement.series.dc.through import Source, Through
from checkers.wording.book import part

MANY = 4


def amount(bounds: Bounds) -> str:
    """Return bounds as words: up to 12 mA, none, or limited only by the fault loop."""
    if isinf(bounds.high):
        return part("series.fault-loop")
    if not bounds.high:
        return part("series.none")
    return part("series.up-to", most=format_quantity(bounds.high, "mA"))


def flow_words(arrangement: Arrangement, place: int, through: Through) -> str:
    """Return in a sentence how much can flow through a device, and where it comes from."""
    bounds = through.bounds
    if not bounds.high:
        return part("series.no-dc-expected")
    if isinf(bounds.high):
        return part("series.flow-unlimited", sources=_from(arrangement, place, through))
    most = format_quantity(bounds.high, "mA")
    if not through.parts:
        return part("series.flow-ordinary", most=most)
    flow = part("series.flow-up-to", most=most, sources=_from(arrangement, place, through))
    return " ".join((flow, *_beside(through)))


def _beside(through: Through) -> list[str]:
    """Return in a sentence what ordinary electronics beside the rest may make of it."""
    if through.with_ordinary is None:
        return []
    each, every = (format_quantity(one, "mA") for one in (through.ordinary, through.with_ordinary))
    return [part("series.ordinary-beside", each=each, all=every)]


def _from(arrangement: Arrangement, place: int, through: Through) -> str:
    """Return where it comes from, the greatest first, and what keeps it to less than the sum."""
    parts = sorted(through.parts.items(), key=lambda one: -one[1].high)
    named = [_source(_name(source, arrangement, place), one) for source, one in parts[:MANY]]
    if len(parts) > MANY:
        named.append(part("series.more-sources", more=len(parts) - MANY))
    sources = "; ".join(named)
    if sum(bounds.high for _, bounds in parts) <= through.bounds.high:
        return sources
    apart = through.ceiling.high > through.bounds.high
    return part("series.no-more-together" if apart else "series.opens-there", sources=sources)


def _name(source: Source, arrangement: Arrangement, here: int) -> str:
    kind, place = source
    if kind == "load":
        load = arrangement.loads[place]
        return pieces(load.count, load.name)
    if place == here:
        return part("series.not-named")
    return part("series.through", device=arrangement.devices[place].id)


def pieces(count: int, name: str) -> str:
    """Return equal pieces of equipment in words: 3 × charge point, or the name of one."""
    return part("series.pieces", count=count, name=name) if count > 1 else name


def _source(name: str, bounds: Bounds) -> str:
    if isinf(bounds.high):
        return part("series.source-unlimited", name=name)
    return part("series.source", name=name, amount=format_quantity(bounds.high, "mA"))


def flow_sources(arrangement: Arrangement, through: Through) -> list[Citation]:
    """Return where the amounts stand that flow through a device, and of what is a remark."""
    cited = [one for source in through.parts for one in _sources_of(source, arrangement)]
    if through.ordinary:
        cited.append(promised_by(DeviceType.A)[1])
    return cited


def _sources_of(source: Source, arrangement: Arrangement) -> tuple[Citation, ...]:
    kind, place = source
    if kind == "device":
        device = arrangement.devices[place].device
        limits = dc_limits(device, arrangement.code, arrangement.day)
        return citations(limits.opens_row if limits.senses else limits.bears_row)
    load = arrangement.loads[place]
    if load.protection == DCProtection.TYPE_B:
        return (CONSTANTS["built_in_type_b_rating"].citation,)
    interrupter = interrupter_on_dc(load.equipment, arrangement.code, arrangement.day)
    if interrupter is not None:
        return citations(interrupter[1])
    return (*load.equipment.need.sources, load.equipment.smooth_dc_source)
