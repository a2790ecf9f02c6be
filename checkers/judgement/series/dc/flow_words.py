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

FAULT_LOOP = "limited only by the fault loop"
MANY = 4
BESIDE = (
    " Ordinary electronics on it are not in that sum: up to {each} each, {all} with one piece of "
    "them. The codes take a type A for any number of them, so this is a remark: measure."
)


def amount(bounds: Bounds) -> str:
    """Return bounds as words: up to 12 mA, none, or limited only by the fault loop."""
    if isinf(bounds.high):
        return FAULT_LOOP
    return f"up to {format_quantity(bounds.high, 'mA')}" if bounds.high else "none"


def flow_words(arrangement: Arrangement, place: int, through: Through) -> str:
    """Return in a sentence how much can flow through a device, and where it comes from."""
    bounds = through.bounds
    if not bounds.high:
        return "No smooth DC is to be expected through it from what is listed."
    if isinf(bounds.high):
        return f"The smooth DC through it is {FAULT_LOOP}{_from(arrangement, place, through)}."
    most = format_quantity(bounds.high, "mA")
    if not through.parts:
        return f"Each piece of ordinary electronics on it may leave up to {most} of smooth DC."
    whence, beside = _from(arrangement, place, through), _beside(through)
    return f"Up to {most} of smooth DC can flow through it unseen{whence}.{beside}"


def _beside(through: Through) -> str:
    """Return in a sentence what ordinary electronics beside the rest may make of it."""
    if through.with_ordinary is None:
        return ""
    return BESIDE.format(
        each=format_quantity(through.ordinary, "mA"),
        all=format_quantity(through.with_ordinary, "mA"),
    )


def _from(arrangement: Arrangement, place: int, through: Through) -> str:
    """Return in brackets where it comes from, the greatest first."""
    parts = sorted(through.parts.items(), key=lambda part: -part[1].high)
    words = [
        f"{_name(source, arrangement, place)}{_share(bounds)}" for source, bounds in parts[:MANY]
    ]
    more = [f"{len(parts) - MANY} more"] if len(parts) > MANY else []
    limited = sum(bounds.high for _, bounds in parts) > through.bounds.high
    above = f"; {_what_limits(through)}" if limited else ""
    return f" ({'; '.join([*words, *more])}{above})"


def _what_limits(through: Through) -> str:
    if through.ceiling.high > through.bounds.high:
        return "no more comes together"
    return "a device that senses it opens there"


def _name(source: Source, arrangement: Arrangement, here: int) -> str:
    kind, place = source
    if kind == "device":
        return (
            "equipment not named" if place == here else f"through {arrangement.devices[place].id}"
        )
    load = arrangement.loads[place]
    return f"{load.count} × {load.name}" if load.count > 1 else load.name


def _share(bounds: Bounds) -> str:
    if isinf(bounds.high):
        return ": without a limit of its own"
    return f": {format_quantity(bounds.high, 'mA')}"


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
