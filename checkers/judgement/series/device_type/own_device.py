"""What rules that name equipment ask of its device: a small rating, and one of its own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from checkers.domain.loads.kinds import LoadRule
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.equipment.device_fit import rating_finding
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.device_type.type_fit import protected_by
from checkers.wording.book import part
from checkers.wording.finding import finding, with_parts

CODES = {
    Outcome.FAIL: "series.own-device-shared",
    Outcome.CANNOT_SAY: "series.own-device-not-listed",
    Outcome.PASS: "series.own-device",
}


class Sharing(NamedTuple):
    """Equipment under such a rule: its place, the nearest device, and whether others share it.

    `shared` is shared with other kinds of equipment; `alone` is one piece with nothing beside
    it; `small` is a rating that the rule allows, None where the rating is not known.
    """

    load: int
    device: int
    rule: LoadRule
    shared: bool
    alone: bool
    small: bool | None

    @property
    def outcome(self) -> Outcome:
        """Whether it has a device of its own; where several share one, others may be built in."""
        if self.shared:
            return Outcome.FAIL
        return Outcome.PASS if self.alone and self.small else Outcome.CANNOT_SAY


def sharings(arrangement: Arrangement) -> Iterator[Sharing]:
    """Yield each load that a rule of the code gives its own device, with how it stands."""
    rules = [_own_rule(arrangement, number) for number in range(len(arrangement.loads))]
    ruled = {number: rule for number, rule in enumerate(rules) if rule is not None}
    for place, device in enumerate(arrangement.devices):
        if not ruled or not device.is_rcd:
            continue
        for number in protected_by(arrangement, place):
            if number in ruled:
                rule = ruled[number]
                shared = not _fed_by(arrangement, place) <= ruled.keys()
                alone = not shared and _alone(arrangement, place, number)
                small = _small(device.device.rated_residual_current, rule)
                yield Sharing(number, place, rule, shared, alone, small)


def own_device_findings(arrangement: Arrangement, mend: str) -> list[Finding]:
    """Return the findings on the rating, and on a device of its own, where a rule names them."""
    owned = [_finding(arrangement, one, mend) for one in sharings(arrangement)]
    return [*owned, *_ratings(arrangement)]


def _own_rule(arrangement: Arrangement, number: int) -> LoadRule | None:
    rules = _rules(arrangement, number)
    return next((rule for rule in rules if rule.own_device), None)


def _rules(arrangement: Arrangement, number: int) -> list[LoadRule]:
    """Return the rules judged of a load; one with a type B of its own has its device."""
    load = arrangement.loads[number]
    if load.protection == DCProtection.TYPE_B:
        return []
    return [rule for rule in load.equipment.load.rules if rule.binds(arrangement.code)]


def _fed_by(arrangement: Arrangement, place: int) -> set[int]:
    """Return the loads that a device feeds, directly or through others."""
    feeding = [place, *arrangement.below(place)]
    return {number for one in feeding for number in arrangement.shape.loads[one]}


def _alone(arrangement: Arrangement, place: int, number: int) -> bool:
    below = [c for c in arrangement.shape.children[place] if arrangement.devices[c].is_rcd]
    only = protected_by(arrangement, place) == (number,)
    return only and not below and arrangement.loads[number].count == 1


def _small(rated: float | None, rule: LoadRule) -> bool | None:
    if rated is None or rule.rated_at_most is None:
        return None if rule.rated_at_most is not None else True
    return rated <= rule.rated_at_most


def _finding(arrangement: Arrangement, one: Sharing, mend: str) -> Finding:
    device = arrangement.devices[one.device].id
    unread = one.alone and one.small is None
    most = format_quantity(one.rule.rated_at_most or 0.0, "mA")
    found = finding(
        "series.own-device-rating-missing" if unread else CODES[one.outcome],
        one.outcome,
        Judges.INSTALLATION_CODE,
        {"device": device, "load": arrangement.loads[one.load].name, "most": most},
        device=device,
        field=_field(one, unread=unread),
        sources=(one.rule.source,),
        **({"do_next": mend} if one.outcome is Outcome.FAIL else {}),
    )
    return with_parts(found, one.rule.says, one.rule.unasked)


def _field(one: Sharing, *, unread: bool) -> str:
    rating = f"devices[{one.device}].rated_residual_current"
    return rating if unread else f"loads[{one.load}].below"


def _ratings(arrangement: Arrangement) -> Iterator[Finding]:
    """Yield what rules on the rating alone leave open: no device above a load is small enough."""
    for number, load in enumerate(arrangement.loads):
        for rule in _rules(arrangement, number):
            if rule.own_device or rule.rated_at_most is None:
                continue
            ratings = _ratings_above(arrangement, number)
            known = [one for one in ratings if one is not None]
            rated = None if None in ratings else min(known, default=None)
            if any(one <= rule.rated_at_most for one in known):
                continue
            found = rating_finding(rule, rule.rated_at_most, rated)
            yield replace(
                found,
                about=part("series.rating-for", load=load.name),
                outcome=Outcome.CANNOT_SAY,
                do_next=found.do_next or part("series.name-own-device"),
                field=f"loads[{number}].below",
            )


def _ratings_above(arrangement: Arrangement, number: int) -> list[float | None]:
    parents = arrangement.loads[number].parents
    above = [arrangement.devices[one] for one in (*parents, *arrangement.above(parents))]
    return [one.device.rated_residual_current for one in above if one.is_rcd]
