"""Is this device fit for this equipment: by its circuit, its maker, and the rules naming it?"""

from __future__ import annotations

from collections.abc import Sequence

from checkers.domain.codes import Code
from checkers.domain.devices import Device, DeviceType, Form
from checkers.domain.load_kinds import Also, LoadRule, MetBy
from checkers.domain.quantities import format_quantity
from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.judgement.comparison import Limits
from checkers.judgement.equipment import SILENT, Equipment
from checkers.judgement.fault_fit import NOT_PROTECTIVE
from checkers.judgement.numbers import figure_numbers
from checkers.judgement.type_order import covers, in_words

ABOUT = "device type for this equipment"
NO_DEVICE = "No device type was given, so nothing was judged."
ASK_MAKER = "Ask the maker of the equipment, in writing, which device type it calls for."
CONTRADICTED = (
    "What its maker is said to state is less than its circuit calls for, and no condition here "
    "explains it."
)


def judge_fit(equipment: Equipment, device: Device) -> Finding:
    """Return the finding on a device's type for a piece of equipment.

    A type that its circuit calls for, or a narrower one whose condition is met, passes; one
    whose condition is not known cannot be judged; any other fails.
    """
    why_not = NOT_PROTECTIVE.get(Form(device.form))
    if why_not or device.type == DeviceType.UNKNOWN:
        odd = f"{CONTRADICTED} " if equipment.contradicted else ""
        says = f"{why_not or NO_DEVICE} {odd}{equipment.need.says}"
        return _finding(equipment, device, Outcome.CANNOT_SAY, says)
    if covers(device.type, equipment.least_type):
        return _finding(equipment, device, Outcome.PASS, _words_of_pass(equipment, device))
    if equipment.contradicted:
        says = f"{CONTRADICTED} {equipment.need.says}"
        return _finding(equipment, device, Outcome.CANNOT_SAY, says, ASK_MAKER)
    return _narrower(equipment, device)


def _words_of_pass(equipment: Equipment, device: Device) -> str:
    if not covers(device.type, equipment.need.type):
        met = next(iter(equipment.met))
        stated = met.when != MetBy.SEPARATION and equipment.maker_says != SILENT
        keep = " Keep its maker's statement with the record." if stated else ""
        return f"Type {device.type} serves, because {met.where}.{keep}"
    silent = equipment.maker_says == SILENT and equipment.load.contains_converter
    more = " Its maker's instructions come first: read them." if silent else ""
    return f"Type {device.type} sees what this equipment can give. {equipment.need.says}{more}"


def _narrower(equipment: Equipment, device: Device) -> Finding:
    """Return the finding on a type that is narrower than what the equipment calls for."""
    serving = [also for also in equipment.need.also if device.type in also.types]
    unknown = [also.where for also in serving if equipment.meets(also) is None]
    outcome = Outcome.CANNOT_SAY if unknown else Outcome.FAIL
    do_next = f"Fit type {equipment.least_type}, with nothing narrower above it."
    if unknown:
        do_next = f"Find out whether {', or whether '.join(unknown)}."
    elif device.type == DeviceType.AC:
        do_next = equipment.load.with_type_ac
    says = _why_not_enough(equipment, device, serving)
    return _finding(equipment, device, outcome, says, do_next)


def _why_not_enough(equipment: Equipment, device: Device, serving: Sequence[Also]) -> str:
    if equipment.maker_type and not covers(device.type, equipment.maker_type):
        return f"Type {device.type} is not enough: its maker calls for {equipment.maker_type}."
    if serving:
        where = ", or where ".join(also.where for also in serving)
        return f"Type {device.type} would serve only where {where}. {equipment.need.says}"
    return f"Type {device.type} is not enough. {equipment.need.says}"


def _finding(
    equipment: Equipment, device: Device, outcome: Outcome, says: str, do_next: str = ""
) -> Finding:
    known = device.type != DeviceType.UNKNOWN
    return Finding(
        about=ABOUT,
        outcome=outcome,
        says=says,
        judges=Judges.FITNESS_FOR_DC,
        measured=f"type {device.type}" if known else "",
        limit=f"type {equipment.least_type} or wider",
        do_next=do_next,
        field="device.type",
        sources=equipment.need.sources,
    )


def judge_by_load_rules(
    equipment: Equipment, device: Device, code: Code, shared: bool | None
) -> list[Finding]:
    """Return findings on the rating, and on sharing the device, where a rule names them."""
    findings: list[Finding] = []
    for rule in equipment.load.rules:
        if not rule.codes & {code.key, code.follows}:
            continue
        if rule.rated_at_most is not None and device.rated_residual_current is not None:
            findings.append(_rating(rule, rule.rated_at_most, device.rated_residual_current))
        if rule.own_device and shared is not None:
            findings.append(_sharing(rule, shared=shared))
    return findings


def _rating(rule: LoadRule, most: float, rated: float) -> Finding:
    outcome = Outcome.PASS
    if rated > most:
        outcome = Outcome.CANNOT_SAY if rule.only_for else Outcome.FAIL
    return Finding(
        about="rated residual current",
        outcome=outcome,
        says=rule.says,
        judges=Judges.INSTALLATION_CODE,
        measured=format_quantity(rated, "mA"),
        limit=f"≤ {format_quantity(most, 'mA')}",
        do_next=f"Find out whether it is one of these: {rule.only_for}."
        if outcome is Outcome.CANNOT_SAY
        else "",
        field="device.rated_residual_current",
        sources=(rule.source,),
        numbers=figure_numbers(rated, "mA", Limits(at_most=most)),
    )


def _sharing(rule: LoadRule, *, shared: bool) -> Finding:
    return Finding(
        about="a device of its own",
        outcome=Outcome.FAIL if shared else Outcome.PASS,
        says=rule.says,
        judges=Judges.INSTALLATION_CODE,
        measured="it feeds other circuits as well" if shared else "it feeds nothing else",
        do_next="Give the equipment a device of its own." if shared else "",
        field="shared",
        sources=(rule.source,),
    )


def narrower_types(equipment: Equipment, least: str, refused: frozenset[str]) -> list[str]:
    """Return the types that would serve under a condition not yet met, each with it in words."""
    entries = []
    for also in equipment.need.also:
        if also.when == MetBy.MAKER and equipment.maker_type:
            continue  # its maker has spoken, and asks for more
        kept = [one for one in also.types if one not in refused and not covers(one, least)]
        if kept:
            entries.append(f"{in_words(kept)}, where {also.where}")
    return entries
