"""How much standing leakage is on this device, how much is left, how to split the circuits?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.device.supply import Supply
from checkers.domain.inputs.fields import choice, group, many, quantity, text, whole_number
from checkers.domain.loads.registry import LOAD_CHOICES, LOADS
from checkers.domain.question import Question
from checkers.domain.verdicts import Figure, Outcome, Result
from checkers.judgement.case import Case
from checkers.judgement.electrode.line_voltage import usual_line_voltage
from checkers.judgement.leakage.findings import judge_leakage
from checkers.judgement.leakage.parts import NOISE, Nature
from checkers.judgement.leakage.phasors import Line
from checkers.judgement.leakage.split import Room, Split, carried_by, room_for, split
from checkers.judgement.leakage.standing_leakage import (
    Budget,
    ListedItem,
    StandingLeakage,
    budget_of,
    listed,
)
from checkers.judgement.limits.safe_rounding import rounded_down, rounded_up
from checkers.wording.book import part

OTHER = "other"
DIGITS = 5
FILTERS = (
    ("off", "no filter: reads to 1 kHz or more"),
    ("on", "filter on: mains frequency only"),
    ("unknown", "not known"),
)
SUPPLIES = (
    ("unknown", "not known"),
    ("single-phase", "single-phase: all on one line"),
    ("three-phase", "three-phase"),
)
SINGLE = "single-phase"


@dataclass(frozen=True, slots=True)
class Item:
    """Equipment or a circuit of one kind, and the leakage of each."""

    load: str = choice((*LOAD_CHOICES, (OTHER, "Other")), "Equipment", default=OTHER)
    count: int = whole_number("How many", least=1, most=500, default=1, left_out="one")
    leakage: float | None = quantity(
        "load_leakage",
        "Leakage of each",
        default=None,
        explain="That of its kind if left out.",
        left_out="that of its kind",
    )
    nature: str = choice(Nature, "Through", default=Nature.UNKNOWN)
    line: str = choice(Line, "Line", default=Line.UNKNOWN)
    label: str = text("Circuit or name", most=60)

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        if self.load == OTHER and self.leakage is None:
            return {
                "leakage": "is needed, for example 0.75 mA, unless a kind of equipment is named"
            }
        return {}

    @property
    def as_listed(self) -> ListedItem:
        """The item as the judgement takes it."""
        where = (self.nature, self.told_line)
        return listed(self.load, self.label, self.count, self.leakage, where)

    @property
    def told_line(self) -> str:
        """The line, as told or by the kind of equipment: some is fed from three lines only."""
        known = LOADS.get(self.load)
        only_three = known is not None and set(known.circuits) == {Supply.THREE_PHASE}
        return Line.THREE_PHASE if only_three and self.line == Line.UNKNOWN else self.line


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A device and what leaks on it: measured, listed, or through the insulation."""

    device: Device = group(Device, "Device", default=Device)
    measured: float | None = quantity(
        "standing_leakage",
        "Leakage measured",
        default=None,
        explain="With a leakage clamp around all live conductors, everything on and working.",
    )
    items: tuple[Item, ...] = many(
        Item, "Equipment or circuits", each="Equipment or circuit", most=40
    )
    supply: str = choice(
        SUPPLIES,
        "The device feeds",
        default="unknown",
        explain="On a single-phase device all leakage is on one line and adds up.",
    )
    insulation_resistance: float | None = quantity("insulation_resistance", default=None)
    clamp_filter: str = choice(FILTERS, "Filter of the clamp", default="unknown", advanced=True)
    clamp_uncertainty: float | None = quantity(
        "current_uncertainty", default=None, advanced=True, left_out="10 % of the limit"
    )
    line_voltage: float | None = quantity(
        "line_voltage", default=None, advanced=True, left_out="the usual one of the country"
    )

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        named = {one.told_line for one in self.items} - {Line.UNKNOWN}
        if self.supply == SINGLE and (len(named) > 1 or Line.THREE_PHASE in named):
            lines = ", ".join(sorted(named))
            return {"supply": f"is single-phase, and the items name {lines}"}
        return {}

    @property
    def hazards(self) -> frozenset[str]:
        """What the equipment of the list brings with it."""
        named = (LOADS[one.load] for one in self.items if one.load in LOADS)
        return frozenset().union(*(load.hazards for load in named))

    @property
    def leakage(self) -> StandingLeakage:
        """The standing leakage as the judgement takes it."""
        return StandingLeakage(
            case=Case(self.device, Circuit(), Instrument(), self.local_code, self.day),
            measured=self.measured,
            stated_uncertainty=self.clamp_uncertainty,
            clamp_filter=self.clamp_filter,
            items=tuple(item.as_listed for item in self.items),
            insulation_resistance=self.insulation_resistance,
            line_voltage=self.line_voltage or usual_line_voltage(self.code),
            single_phase=self.supply == SINGLE,
        )


def check(inputs: Inputs) -> Result:
    """Judge the standing leakage, and work out how much more fits and how to split it.

    Inputs: a device; a measurement [mA], a list of items [mA each], an insulation resistance.
    Result: findings; in `answer` the leakage, the budget and the no-trip limit [mA], the share
    of the budget used, how many more of each item fit, and the items split over devices.
    """
    leakage = inputs.leakage
    budget = budget_of(leakage.case)
    return Result(
        findings=judge_leakage(leakage, budget),
        answer={
            **_sums(leakage),
            **_limits(budget),
            **_share(leakage, budget),
            **_room(leakage, budget),
        },
        cautions=tuple(_cautions(leakage, budget)),
    )


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


def _cautions(leakage: StandingLeakage, budget: Budget) -> list[str]:
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


def _example(title: str, outcome: Outcome, **request: Any) -> Example:
    return Example(title, {"code": "gb", "on": "2026-11-24", **request}, outcome)


DEVICE = {"type": "A", "rated_residual_current": "30 mA", "form": "rcbo"}
CHECKER = Checker(
    slug="leakage-budget",
    title="Leakage budget",
    question="How much standing leakage is on this device, how much is left, "
    "how to split the circuits?",
    inputs=Inputs,
    check=check,
    examples=(
        _example(
            "Ten office workplaces of 0.75 mA each",
            Outcome.PASS,
            device=DEVICE,
            items=[{"load": "it-equipment", "count": 10, "leakage": "0.75 mA"}],
        ),
        _example(
            "Six machines of 3.5 mA on one single-phase device",
            Outcome.FAIL,
            device=DEVICE,
            supply="single-phase",
            items=[{"load": "washing-machine", "count": 6, "leakage": "3.5 mA"}],
        ),
        _example(
            "Nine items of 2 mA, three on each line",
            Outcome.PASS,
            device={"type": "A", "rated_residual_current": "30 mA", "form": "rccb"},
            supply="three-phase",
            items=[
                {"leakage": "2 mA", "count": 3, "nature": "capacitive", "line": line}
                for line in ("L1", "L2", "L3")
            ],
        ),
        _example(
            "Measured with a clamp",
            Outcome.PASS,
            device=DEVICE,
            measured="6.2 mA",
            clamp_filter="off",
        ),
        _example(
            "From an insulation resistance alone",
            Outcome.CANNOT_SAY,
            device=DEVICE,
            insulation_resistance="37 kohm",
        ),
    ),
)
