"""Equipment that a rule gives a device of its own: does it share one with other circuits?"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from checkers.domain.load_kinds import LoadRule
from checkers.domain.quantities import format_quantity
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.type_fit import protected_by

EACH_ITS_OWN = (
    "Each of {names} needs a device of its own, of {most} or less: one built into the equipment "
    "counts, if its maker says so."
)


class Sharing(NamedTuple):
    """Equipment under such a rule: its place, the nearest device, and whether others share it."""

    load: int
    device: int
    rule: LoadRule
    shared: bool
    alone: bool


def sharings(arrangement: Arrangement) -> Iterator[Sharing]:
    """Yield each load that a rule of the code gives its own device, with how it stands.

    `shared` is shared with other kinds of equipment; `alone` is one piece alone on a device of
    a rating that the rule allows. Between the two are several such pieces on one device.
    """
    rules = [_rule(arrangement, number) for number in range(len(arrangement.loads))]
    ruled = {number: rule for number, rule in enumerate(rules) if rule is not None}
    for place, device in enumerate(arrangement.devices):
        if not ruled or not device.is_rcd:
            continue
        for number in protected_by(arrangement, place):
            if number in ruled:
                shared = not _fed_by(arrangement, place) <= ruled.keys()
                alone = not shared and _alone(arrangement, place, number, ruled[number])
                yield Sharing(number, place, ruled[number], shared, alone)


def own_device_findings(arrangement: Arrangement, mend: str) -> list[Finding]:
    """Return a finding for each load that shares its device, or has one to itself."""
    found = [one for one in sharings(arrangement) if one.shared or one.alone]
    return [_finding(arrangement, one, mend) for one in found]


def each_its_own(arrangement: Arrangement) -> list[str]:
    """Return a caution where several such pieces, and nothing else, stand on one device."""
    unclear = [one for one in sharings(arrangement) if not one.shared and not one.alone]
    if not unclear:
        return []
    names = dict.fromkeys(arrangement.loads[one.load].name for one in unclear)
    most = format_quantity(unclear[0].rule.rated_at_most or 0.0, "mA")
    return [EACH_ITS_OWN.format(names=" and ".join(names), most=most)]


def _rule(arrangement: Arrangement, number: int) -> LoadRule | None:
    load, code = arrangement.loads[number], arrangement.code
    if load.protection == DCProtection.TYPE_B:
        return None
    rules = (rule for rule in load.equipment.load.rules if rule.own_device)
    return next((rule for rule in rules if rule.codes & {code.key, code.follows}), None)


def _fed_by(arrangement: Arrangement, place: int) -> set[int]:
    """Return the loads that a device feeds, directly or through others."""
    feeding = [place, *arrangement.below(place)]
    return {number for one in feeding for number in arrangement.shape.loads[one]}


def _alone(arrangement: Arrangement, place: int, number: int, rule: LoadRule) -> bool:
    rated = arrangement.devices[place].device.rated_residual_current
    small = rated is not None and rated <= (rule.rated_at_most or rated)
    below = [c for c in arrangement.shape.children[place] if arrangement.devices[c].is_rcd]
    only = protected_by(arrangement, place) == (number,)
    return small and only and not below and arrangement.loads[number].count == 1


def _finding(arrangement: Arrangement, one: Sharing, mend: str) -> Finding:
    device = arrangement.devices[one.device]
    name = arrangement.loads[one.load].name
    return Finding(
        about=f"a device of its own for {name}",
        outcome=Outcome.FAIL if one.shared else Outcome.PASS,
        says=f"{device.id} feeds other circuits as well. {one.rule.says}"
        if one.shared
        else f"{device.id} feeds nothing else. {one.rule.says}",
        judges=Judges.INSTALLATION_CODE,
        do_next=mend if one.shared else "",
        device=device.id,
        field=f"loads[{one.load}].below",
        sources=(one.rule.source,),
    )
