"""Devices above, below and beside each other: does DC blind any, and which opens first?"""

from __future__ import annotations

from dataclasses import MISSING, dataclass
from datetime import date

from checkers.catalogue.type_for_load import CONDITION, DECLARED, FITTED_ON, MAKER_CHOICES
from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device, Form
from checkers.domain.device.supply import Supply
from checkers.domain.errors import quoted
from checkers.domain.inputs.fields import (
    Folded,
    choice,
    day,
    many,
    quantity,
    text,
    whole_number,
    yes_no,
)
from checkers.domain.loads.kinds import Separation
from checkers.domain.loads.registry import LOAD_CHOICES, LOADS
from checkers.domain.question import Question
from checkers.domain.verdicts import Outcome, Result
from checkers.judgement.electrode.line_voltage import usual_line_voltage
from checkers.judgement.equipment.equipment import SILENT, Equipment
from checkers.judgement.series.arrangement import (
    Arrangement,
    DCProtection,
    PlacedDevice,
    PlacedLoad,
    arrange,
)
from checkers.judgement.series.judge import judge_series
from checkers.judgement.series.positions import parents_of, places_of, problems_of
from checkers.judgement.series.selectivity import fault_levels

SYSTEMS = (("tn", "TN"), ("tt", "TT: own electrode"))
BELOW = (
    "The name of the device above it; leave it empty at the supply. Two names with a comma "
    "between: fed through both in parallel."
)
SELECTIVE = (
    "Whether a fault below one device must leave the one above closed. Not said: it counts "
    "where the upper device is delayed."
)


@dataclass(frozen=True, kw_only=True)
class Placed:
    """Something with a name and a place in the tree."""

    id: str = text("Name", default=MISSING, most=40)
    below: str = text("Below", most=200, explain=BELOW)


@dataclass(frozen=True, kw_only=True)
class DeviceInTree(Device, Placed):
    """One device of the tree."""

    form: str = choice(Form, "Form", default=Form.RCCB, advanced=True)
    fitted_on: date | None = day("Day the device was fitted", advanced=True, explain=FITTED_ON)

    @property
    def device(self) -> Device:
        """The device without its name and place."""
        return Device(self.type, self.rated_residual_current, self.delay, self.form, self.made_to)


@dataclass(frozen=True, kw_only=True)
class LoadInTree(Placed):
    """Equal pieces of equipment below one device."""

    id: str = text("Name", most=40)
    below: str = text("Below", default=MISSING, most=200, explain="The device that feeds it.")
    load: str = choice(LOAD_CHOICES, "Equipment")
    count: int = whole_number("How many", least=1, most=500, default=1, left_out="one")
    dc_protection: str = choice(
        DCProtection, "Its own protection against smooth DC", default=DCProtection.NONE
    )
    dc_residual: float | None = quantity(
        "dc_residual", "Smooth DC its maker declares", default=None, explain=DECLARED
    )
    supply: str = choice(Supply, "Supply", default="", advanced=True)
    separation: str = choice(
        Separation,
        "Separation of its DC side from the mains",
        default=Separation.UNKNOWN,
        advanced=True,
    )
    maker_says: str = choice(MAKER_CHOICES, "What its maker states", default=SILENT, advanced=True)
    condition_holds: bool | None = yes_no(
        "The further condition holds", explain=CONDITION, advanced=True
    )

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        circuits = LOADS[self.load].circuits
        if not self.supply or self.supply in circuits:
            return {}
        known = ", ".join(circuits)
        return {"supply": f"{quoted(self.supply)} is not a supply of this equipment: {known}"}

    def placed(self, parents: tuple[int, ...]) -> PlacedLoad:
        """Return it as the judgement takes it, on the devices in some places."""
        load = LOADS[self.load]
        equipment = Equipment(
            load=load,
            supply=self.supply or load.usual_supply,
            separation=self.separation,
            maker_says=self.maker_says,
            detection=self.dc_protection == DCProtection.RDC_DD,
            condition=self.condition_holds,
            declared=self.dc_residual,
        )
        return PlacedLoad(
            self.id or load.name,
            equipment,
            self.count,
            self.dc_protection,
            parents,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """The devices and loads of a tree, and what decides the fault current."""

    devices: tuple[DeviceInTree, ...] = many(
        DeviceInTree,
        "Devices",
        each="Device",
        least=1,
        most=100,
        folded=Folded("id", "Which device?"),
    )
    loads: tuple[LoadInTree, ...] = many(
        LoadInTree, "Equipment", most=200, folded=Folded("id", "Which equipment?")
    )
    selective: bool | None = yes_no("Must only the lower device open?", explain=SELECTIVE)
    system: str = choice(SYSTEMS, "Earthing system", default="tn")
    electrode_resistance: float | None = quantity(
        "electrode_resistance",
        default=None,
        advanced=True,
        left_out="a fault loop's in TN, the greatest allowed in TT",
    )
    line_voltage: float | None = quantity(
        "line_voltage", default=None, advanced=True, left_out="the usual one of the country"
    )

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        problems = problems_of(self.devices, self.loads)
        for place, one in enumerate(self.devices):
            if one.fitted_on and one.fitted_on > self.day:
                late = f"{one.fitted_on} is after the day asked about, {self.day}"
                problems[f"devices[{place}].fitted_on"] = late
        return problems

    @property
    def hazards(self) -> frozenset[str]:
        """What its equipment brings with it."""
        return frozenset().union(*(LOADS[one.load].hazards for one in self.loads))

    @property
    def arrangement(self) -> Arrangement:
        """The tree as the judgement takes it."""
        places = places_of(self.devices)
        devices = [
            PlacedDevice(one.id, one.device, parents_of(one, places), one.fitted_on)
            for one in self.devices
        ]
        loads = [one.placed(parents_of(one, places)) for one in self.loads]
        return arrange(devices, loads, self.local_code, self.day)

    @property
    def fault_supply(self) -> fault_levels.Supply:
        """What decides the current of an earth fault."""
        return fault_levels.Supply(
            system=self.system,
            resistance=self.electrode_resistance,
            line_voltage=self.line_voltage or usual_line_voltage(self.code),
            code=self.local_code,
            day=self.day,
        )


def check(inputs: Inputs) -> Result:
    """Judge smooth DC through each device and selectivity of each pair; find the least change.

    Inputs: devices and loads, each with its name and the device above it.
    Result: a finding for each device on the DC [mA] through it, for each load that a rule gives
    a device of its own, and for each pair on which opens first; in `answer` the same in
    figures, the least change that mends it, and the drawing.
    """
    return judge_series(inputs.arrangement, inputs.fault_supply, inputs.selective)


TWO_CHARGE_POINTS = Example(
    title="Two charge points, each with 6 mA detection, below one type A",
    request={
        "devices": [
            {"id": "main", "type": "A", "rated_residual_current": "100 mA", "delay": "S"},
            {"id": "left", "below": "main", "type": "A", "rated_residual_current": "30 mA"},
            {"id": "right", "below": "main", "type": "A", "rated_residual_current": "30 mA"},
        ],
        "loads": [
            {
                "id": "point 1",
                "below": "left",
                "load": "ev-charge-point",
                "dc_protection": "rdc-dd",
            },
            {
                "id": "point 2",
                "below": "right",
                "load": "ev-charge-point",
                "dc_protection": "rdc-dd",
            },
        ],
    },
    outcome=Outcome.FAIL,
)
ONE_CHARGE_POINT = Example(
    title="One charge point with 6 mA detection, below a selective main device",
    request={
        "devices": [
            {"id": "main", "type": "A", "rated_residual_current": "100 mA", "delay": "S"},
            {"id": "vehicle", "below": "main", "type": "A", "rated_residual_current": "30 mA"},
        ],
        "loads": [{"below": "vehicle", "load": "ev-charge-point", "dc_protection": "rdc-dd"}],
    },
    outcome=Outcome.PASS,
)
OUTBUILDING = Example(
    title="An outbuilding: 30 mA below 100 mA, neither delayed",
    request={
        "devices": [
            {"id": "house", "type": "A", "rated_residual_current": "100 mA"},
            {"id": "shed", "below": "house", "type": "A", "rated_residual_current": "30 mA"},
        ],
        "loads": [{"below": "shed", "load": "resistive"}],
    },
    outcome=Outcome.CANNOT_SAY,
)

CHECKER = Checker(
    slug="series",
    title="Devices in series",
    question="Devices above, below and beside each other: does DC blind any, "
    "and which opens first?",
    inputs=Inputs,
    check=check,
    examples=(TWO_CHARGE_POINTS, ONE_CHARGE_POINT, OUTBUILDING),
)
