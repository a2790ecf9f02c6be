"""Which device type does this equipment call for, and why?"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from math import isinf
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.codes.binding import seen_from
from checkers.domain.codes.registry import Code, TypeRule
from checkers.domain.device.device import Device, DeviceType
from checkers.domain.device.supply import Supply
from checkers.domain.errors import quoted
from checkers.domain.inputs.fields import choice, day, group, quantity, yes_no
from checkers.domain.loads.kinds import Load, MetBy, Separation
from checkers.domain.loads.registry import LOAD_CHOICES, LOADS
from checkers.domain.question import Question
from checkers.domain.verdicts import Figure, Outcome, Result
from checkers.judgement.equipment.device_fit import (
    judge_by_load_rules,
    judge_fit,
    narrower_types,
)
from checkers.judgement.equipment.equipment import NO_DC, SILENT, Equipment
from checkers.judgement.equipment.own_interrupter import interrupter_in_words, interrupter_on_dc
from checkers.judgement.equipment.type_order import ORDER, covers, in_words
from checkers.judgement.equipment.type_rules import (
    concerning,
    conditional,
    judge_by_code,
    other_means,
    raised,
    refused,
)
from checkers.judgement.series.dc.by_declaration import judge_declared
from checkers.wording.book import part

CONDITION = (
    "Where a narrower type serves only under a further condition: only filament lamps behind a "
    "dimmer, a mains transformer in a welding set, every machine used on a site."
)
DECLARED = (
    "The most that each can leave on its device. In place of what its kind may leave, where a "
    "fault cannot leave more; it says nothing of the type."
)
FITTED_ON = "For a device already in place: the code of that day counts for its type."
MAKER_CHOICES = (
    (SILENT, "nothing is known"),
    *((kind, f"type {kind} suffices, or is called for") for kind in ORDER),
    (NO_DC, "no smooth DC above 6 mA can flow"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """The equipment and what is known of it; a device, if one is to be judged."""

    load: str = choice(LOAD_CHOICES, "Equipment")
    supply: str = choice(
        Supply,
        "Supply",
        default="",
        explain="The usual one of this equipment if left out.",
        left_out="the usual one of this equipment",
    )
    separation: str = choice(
        Separation,
        "Separation of its DC side from the mains",
        default=Separation.UNKNOWN,
        explain="Matters for photovoltaic and battery inverters and for large power supplies.",
    )
    maker_says: str = choice(MAKER_CHOICES, "What its maker states", default=SILENT)
    dc_detection: bool | None = yes_no(
        "6 mA DC detection built in",
        explain="In a vehicle charge point: detection to IEC 62955 that opens its supply.",
    )
    dc_residual: float | None = quantity(
        "dc_residual",
        "Smooth DC its maker declares",
        default=None,
        explain=DECLARED,
        advanced=True,
    )
    condition_holds: bool | None = yes_no(
        "The further condition holds", explain=CONDITION, advanced=True
    )
    shared: bool | None = yes_no("The device feeds other circuits as well")
    fitted_on: date | None = day(
        "Day the device was fitted",
        advanced=True,
        explain=FITTED_ON,
    )
    device: Device = group(Device, "Device", default=Device)

    def problems(self) -> dict[str, str]:
        """Return what is wrong with the fields together, by field."""
        problems = {}
        circuits = LOADS[self.load].circuits
        if self.supply and self.supply not in circuits:
            known = ", ".join(circuits)
            problems["supply"] = f"{quoted(self.supply)} is not a supply of this equipment: {known}"
        if self.fitted_on and self.fitted_on > self.day:
            problems["fitted_on"] = f"{self.fitted_on} is after the day asked about, {self.day}"
        return problems

    @property
    def hazards(self) -> frozenset[str]:
        """What the equipment brings with it."""
        return LOADS[self.load].hazards

    @property
    def equipment(self) -> Equipment:
        """The equipment asked about."""
        load = LOADS[self.load]
        return Equipment(
            load=load,
            supply=self.supply or load.usual_supply,
            separation=self.separation,
            maker_says=self.maker_says,
            detection=self.dc_detection,
            condition=self.condition_holds,
            declared=self.dc_residual,
        )


def check(inputs: Inputs) -> Result:
    """Say which type the equipment calls for, and judge the device where one is given.

    Inputs: equipment, its supply and separation, what its maker states, a device.
    Result: the type, what else serves under which condition, the greatest smooth DC [mA] it
    can leave on its device unseen; findings by circuit, by local code, and by the rules that
    name the equipment.
    """
    equipment, device = inputs.equipment, inputs.device
    code = inputs.local_code
    rules = concerning(code.type_rules_on(inputs.fitted_on or inputs.day), equipment)
    protects = device.protects
    elsewhere = other_means(code, equipment, inputs.day)
    findings = [
        *([] if elsewhere else [judge_fit(equipment, device)]),
        *judge_by_code(rules, equipment, device.type if protects else DeviceType.UNKNOWN),
        *judge_declared(equipment, device, code, inputs.day),
        *judge_by_load_rules(equipment, device, code, inputs.shared),
    ]
    now = concerning(code.type_rules_on(inputs.day), equipment)
    return Result(
        findings=findings,
        answer=_answer_by_interrupter(inputs) if elsewhere else _answer(inputs, now),
        cautions=_cautions(inputs, now),
    )


def _answer(inputs: Inputs, rules: tuple[TypeRule, ...]) -> dict[str, Any]:
    equipment, code = inputs.equipment, inputs.local_code
    least = raised(equipment.least_type, rules, equipment)
    return {
        "type": least,
        "also_acceptable": _also_acceptable(equipment, least, rules),
        "greatest_smooth_dc": part("equipment.limited-by-fault-loop")
        if isinf(equipment.smooth_dc)
        else Figure(equipment.smooth_dc, "mA"),
        "greatest_smooth_dc_source": seen_from(code, equipment.smooth_dc_source).words,
        **_of_the_equipment(equipment, code),
        "rules": _rules(equipment.load, code, general=True),
    }


def _answer_by_interrupter(inputs: Inputs) -> dict[str, Any]:
    """Return the answer where a code gives the equipment an interrupter of its own."""
    equipment, code = inputs.equipment, inputs.local_code
    known = interrupter_on_dc(equipment, code, inputs.day)
    most = {} if known is None else {"greatest_smooth_dc": Figure(known[0], "mA")}
    whence = {} if known is None else {"greatest_smooth_dc_source": known[1].citation.words}
    return {
        "type": part("equipment.by-own-interrupter"),
        "also_acceptable": [],
        **most,
        **whence,
        "interrupter_trips_at": interrupter_in_words(equipment, code, inputs.day),
        **_of_the_equipment(equipment, code),
        "rules": _rules(equipment.load, code, general=False),
    }


def _of_the_equipment(equipment: Equipment, code: Code) -> dict[str, Any]:
    load = equipment.load
    return {
        "supply": equipment.supply,
        "circuits": list(load.circuits[equipment.supply]),
        "waveform": load.waveform,
        "maker_must_declare": list(load.maker_declares),
        **_currents(load, code),
        **_both_ways(load),
    }


def _rules(load: Load, code: Code, *, general: bool) -> list[str]:
    """Return the rules that bind under a code, and the general ones where asked for."""
    told = [rule for rule in load.rules if rule.binds(code) or (general and not rule.codes)]
    return [f"{rule.says} ({seen_from(code, rule.source).words})" for rule in told]


def _also_acceptable(equipment: Equipment, least: str, rules: tuple[TypeRule, ...]) -> list[str]:
    banned = refused(rules)
    wider = [one for one in ORDER if one != least and covers(one, least) and one not in banned]
    narrower = narrower_types(equipment, least, banned)
    narrower += [
        part("equipment.type-where", type=kind, where=where)
        for kind, where in conditional(rules, equipment)
        if not covers(kind, least)
    ]
    if not wider:
        return narrower
    return [*narrower, part("equipment.wider-sees-more", types=in_words(wider))]


def _currents(load: Load, code: Code) -> dict[str, Any]:
    """Return typical and greatest leakage of the equipment, each with its source."""
    leakage = load.figure("leakage")
    if leakage is None:
        return {}
    known = (
        ("leakage_typical", leakage.typical, leakage.typical_source),
        ("leakage_limit", leakage.at_most, leakage.source),
    )
    answer: dict[str, Any] = {"leakage": leakage.says}
    for name, value, source in known:
        if value is not None:
            answer |= {name: Figure(value, "mA"), f"{name}_source": seen_from(code, source).words}
    return answer


def _both_ways(load: Load) -> dict[str, Any]:
    words = {"feeds_back": load.two_way_note, "as_an_island": load.island}
    return {name: text for name, text in words.items() if text}


def _cautions(inputs: Inputs, rules: tuple[TypeRule, ...]) -> tuple[str, ...]:
    asked = {also.when for also in inputs.equipment.need.also}
    cautions = [part("equipment.check-whole-arrangement")]
    if inputs.dc_detection and MetBy.DETECTION not in asked:
        cautions.append(part("equipment.dc-detection-plays-no-part"))
    if inputs.separation == Separation.SIMPLE and MetBy.SEPARATION not in asked:
        cautions.append(part("equipment.separation-plays-no-part"))
    if inputs.shared:
        cautions.append(part("equipment.blinding-takes-every-circuit"))
    known = inputs.device.type != DeviceType.UNKNOWN
    if inputs.fitted_on and known and inputs.device.type in refused(rules):
        said = [rule.says for rule in rules if inputs.device.type in rule.types]
        cautions += [part("equipment.for-new-work-today", rule=rule) for rule in said]
    return tuple(cautions)


HEAT_PUMP = Example(
    title="A heat pump on a type A device, its maker silent",
    request={
        "code": "gb",
        "load": "heat-pump-single-phase",
        "supply": "single-phase",
        "maker_says": "silent",
        "device": {"type": "A", "rated_residual_current": "30 mA"},
    },
    outcome=Outcome.FAIL,
)
CHARGE_POINT = Example(
    title="A charge point with 6 mA DC detection on a type A device",
    request={
        "code": "no",
        "load": "ev-charge-point",
        "supply": "single-phase",
        "dc_detection": "yes",
        "shared": "no",
        "device": {"type": "A", "rated_residual_current": "30 mA"},
    },
    outcome=Outcome.PASS,
)
SOLAR = Example(
    title="A photovoltaic inverter, separation not known",
    request={
        "code": "nl",
        "load": "pv-inverter",
        "separation": "unknown",
        "device": {"type": "A", "rated_residual_current": "30 mA"},
    },
    outcome=Outcome.CANNOT_SAY,
)

CHECKER = Checker(
    slug="type-for-load",
    title="Type for equipment",
    question="Which device type does this equipment call for, and why?",
    inputs=Inputs,
    check=check,
    examples=(HEAT_PUMP, CHARGE_POINT, SOLAR),
)
