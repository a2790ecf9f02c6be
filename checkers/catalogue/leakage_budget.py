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
from checkers.domain.verdicts import Outcome, Result
from checkers.judgement.case import Case
from checkers.judgement.electrode.line_voltage import usual_line_voltage
from checkers.judgement.leakage.answer import answer_of, cautions_of
from checkers.judgement.leakage.findings import judge_leakage
from checkers.judgement.leakage.parts import Nature
from checkers.judgement.leakage.phasors import Line
from checkers.judgement.leakage.standing_leakage import (
    ListedItem,
    StandingLeakage,
    budget_of,
    listed,
)

OTHER = "other"
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
        answer=answer_of(leakage, budget),
        cautions=tuple(cautions_of(leakage, budget)),
    )


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
