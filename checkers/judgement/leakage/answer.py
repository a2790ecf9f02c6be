"""What the leakage budget works out beside its findings: sums, room for more, and a split."""

from __future__ import annotations

from typing import Any

from checkers.domain.verdicts import Figure
from checkers.judgement.leakage.parts import NOISE
from checkers.judgement.leakage.split import Room, Split, carried_by, room_for, split
from checkers.judgement.leakage.standing_leakage import Budget, StandingLeakage
from checkers.judgement.limits.safe_rounding import rounded_down, rounded_up
from checkers.wording.book import part

DIGITS = 5


def answer_of(leakage: StandingLeakage, budget: Budget) -> dict[str, Any]:
    """Return the answer: figures [mA], how many more of each item fit, and the items split.

    What is not known, or says nothing that another figure does not, is left out.
    """
    return {
        **_sums(leakage),
        **_limits(budget),
        **_share(leakage, budget),
        **_room(leakage, budget),
    }


def cautions_of(leakage: StandingLeakage, budget: Budget) -> list[str]:
    """Return what to heed about a budget: its clamp, its lines, and its tests with loads on."""
    unknown = leakage.measured is not None and leakage.clamp_filter == "unknown"
    return [
        *_half_test(leakage, budget),
        *([part("leakage.filter-not-said")] if unknown else []),
        *([part("leakage.added-in-full")] if len(leakage.items) > 1 else []),
        *([part("leakage.partly-cancels")] if _may_span(leakage) else []),
        *(
            [part("leakage.split-on-one-line")]
            if leakage.items and not leakage.is_on_one_line
            else []
        ),
        part("leakage.smooth-dc-apart"),
    ]


def _may_span(leakage: StandingLeakage) -> bool:
    """Tell whether the leakage may lie on several lines, some of it cancelling the rest."""
    return not leakage.is_on_one_line


def _half_test(leakage: StandingLeakage, budget: Budget) -> list[str]:
    carried = carried_by(leakage).total
    if budget.no_trip is None or not carried:
        return []
    total = f"{rounded_up(budget.no_trip + carried):g}"
    test = f"{budget.no_trip:g}"
    return [part("leakage.no-trip-test-with-loads-on", test=test, total=total)]


def _sums(leakage: StandingLeakage) -> dict[str, Any]:
    expected, at_most = leakage.expected, leakage.at_most
    if leakage.measured is not None:
        by_list = {"listed": _up(expected)} if leakage.items else {}
        return {"expected": _up(leakage.measured), **by_list, **_over_lines(leakage)}
    if not leakage.worked_out:
        return {}
    insulation = leakage.through_insulation.total
    return {
        "expected": _up(expected),
        **({"at_most": _up(at_most)} if at_most > expected + NOISE else {}),
        **_over_lines(leakage),
        **({"through_insulation": _up(insulation)} if insulation else {}),
    }


def _over_lines(leakage: StandingLeakage) -> dict[str, Any]:
    """Return what a list is sure to reach and what flows with everything on, where they differ."""
    if not leakage.items or leakage.is_on_one_line:
        return {}
    together = leakage.all_on
    return {
        "at_least": Figure(rounded_down(leakage.must_be), "mA"),
        **({} if together is None else {"with_everything_on": _up(together)}),
    }


def _limits(budget: Budget) -> dict[str, Any]:
    figures = {
        "budget": budget.limit,
        "older_margin": budget.margin,
        "no_trip_limit": budget.no_trip,
    }
    return {name: Figure(value, "mA") for name, value in figures.items() if value is not None}


def _share(leakage: StandingLeakage, budget: Budget) -> dict[str, Any]:
    if budget.limit is None or (leakage.measured is None and not leakage.worked_out):
        return {}
    carried = leakage.expected if leakage.measured is None else leakage.measured
    left = max(0.0, budget.limit - carried_by(leakage).total)
    half = {} if budget.no_trip is None else {"half_test_total": _up(budget.no_trip + carried)}
    return {
        "used_fraction": Figure(rounded_up(carried / budget.limit, DIGITS), ""),
        "left": Figure(rounded_down(left), "mA"),
        **half,
    }


def _room(leakage: StandingLeakage, budget: Budget) -> dict[str, Any]:
    if budget.limit is None or not leakage.items:
        return {}
    rooms = [_room_row(one) for one in room_for(leakage, budget.limit)]
    divided = split(leakage, budget.limit)
    return {"fit": rooms, **({} if divided is None else _split(divided))}


def _room_row(room: Room) -> dict[str, Any]:
    return {
        "item": room.item.name,
        "each": _up(room.item.each.total),
        "fit_alone": room.alone,
        "more_fit": room.more,
    }


def _split(divided: Split) -> dict[str, Any]:
    packing = divided.packing
    too_large = [one.name for one in divided.too_large]
    groups = [
        {
            "device": place,
            "holds": _holds(divided, group),
            "leakage": _up(divided.total(group).total),
        }
        for place, group in enumerate(packing.groups, start=1)
    ]
    return {
        "devices_needed": len(groups),
        "devices_at_least": packing.least,
        **({"groups": groups} if len(groups) > 1 else {}),
        **({"needs_a_higher_rating": too_large} if too_large else {}),
    }


def _holds(divided: Split, group: tuple[int, ...]) -> list[str]:
    pairs = zip(divided.items, group, strict=True)
    return [f"{count} × {item.name}" for item, count in pairs if count]


def _up(current: float) -> Figure:
    return Figure(rounded_up(current, DIGITS), "mA")
