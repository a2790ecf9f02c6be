"""Is this device fit for this equipment: by its circuit, its maker, and the rules naming it?"""

from __future__ import annotations

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device, DeviceType, Form
from checkers.domain.limits.limit import Limit
from checkers.domain.loads.kinds import Also, LoadRule, MetBy
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.equipment.equipment import NO_DC, SAYS_NO_DC, SILENT, Equipment
from checkers.judgement.equipment.fault_fit import NOT_PROTECTIVE
from checkers.judgement.equipment.type_fit import Fit, Why, fit_of
from checkers.judgement.equipment.type_order import covers, in_words
from checkers.judgement.limits.numbers import figure_numbers

ABOUT = "device type for this equipment"
NO_DEVICE = "No device type was given, so nothing was judged."
ASK_MAKER = "Ask the maker of the equipment, in writing, which device type it calls for."
CONTRADICTED = (
    "What its maker is said to state is less than its circuit calls for, and no condition here "
    "explains it."
)
DETECTION_ELSEWHERE = (
    "6 mA detection is made for charge points: whether it serves here, the maker of the "
    "equipment must state."
)
NO_RATING = "Read IΔn on the device."
SHARED_UNSAID = "It is not said whether the device feeds other circuits as well."
SAY_WHETHER_SHARED = "Find out whether the device feeds anything else, and say so."

OWN_DEVICE = "Give the equipment a device of its own."
SHARING: dict[bool | None, tuple[Outcome, str, str]] = {
    True: (Outcome.FAIL, "it feeds other circuits as well", OWN_DEVICE),
    False: (Outcome.PASS, "it feeds nothing else", ""),
    None: (Outcome.CANNOT_SAY, "", SAY_WHETHER_SHARED),
}


def judge_fit(equipment: Equipment, device: Device) -> Finding:
    """Return the finding on a device's type for a piece of equipment."""
    why_not = NOT_PROTECTIVE.get(Form(device.form))
    if why_not or device.type == DeviceType.UNKNOWN:
        odd = f"{CONTRADICTED} " if equipment.contradicted else ""
        says = f"{why_not or NO_DEVICE} {odd}{equipment.need.says}"
        return _finding(equipment, device, Outcome.CANNOT_SAY, says)
    fit = fit_of(device.type, equipment)
    return _finding(
        equipment, device, fit.outcome, _says(equipment, device, fit), _do_next(equipment, fit)
    )


def _says(equipment: Equipment, device: Device, fit: Fit) -> str:
    kind, needs = f"Type {device.type}", equipment.need.says
    if fit.why is Why.CONTRADICTED:
        return f"{CONTRADICTED} {needs}"
    if fit.why is Why.DETECTION_ELSEWHERE:
        return f"{kind} alone is not enough. {DETECTION_ELSEWHERE} {needs}"
    if fit.why is Why.MAKER_ASKS_MORE:
        return f"{kind} is not enough: its maker calls for {equipment.maker_type}."
    if fit.outcome is Outcome.PASS:
        return _words_of_pass(equipment, kind, fit)
    if fit.conditions:
        where = ", or where ".join(also.where for also in fit.conditions)
        return f"{kind} would serve only where {where}. {needs}"
    return f"{kind} is not enough. {needs}"


def _words_of_pass(equipment: Equipment, kind: str, fit: Fit) -> str:
    if fit.why is Why.CONDITION_MET:
        met = fit.conditions[0]
        stated = met.when in {MetBy.MAKER, MetBy.DECLARATION}
        keep = " Keep its maker's statement with the record." if stated else ""
        return f"{kind} serves, because {because(equipment, met)}.{keep}"
    silent = equipment.maker_says == SILENT and equipment.load.contains_converter
    more = " Its maker's instructions come first: read them." if silent else ""
    return f"{kind} sees what this equipment can give. {equipment.need.says}{more}"


def because(equipment: Equipment, met: Also) -> str:
    """Return the condition that is met, in the words of what was said of the equipment."""
    spoke_of_dc = met.when == MetBy.DECLARATION and equipment.maker_says == NO_DC
    return SAYS_NO_DC if spoke_of_dc else met.where


def _do_next(equipment: Equipment, fit: Fit) -> str:
    if fit.outcome is Outcome.PASS:
        return ""
    if fit.why is Why.CONDITION_OPEN:
        return f"Find out whether {', or whether '.join(also.where for also in fit.conditions)}."
    if fit.outcome is Outcome.CANNOT_SAY:
        return ASK_MAKER
    return f"Fit type {equipment.least_type}, with nothing narrower above it."


def _finding(
    equipment: Equipment, device: Device, outcome: Outcome, says: str, do_next: str = ""
) -> Finding:
    known = device.type != DeviceType.UNKNOWN
    if outcome is Outcome.FAIL and device.type == DeviceType.AC:
        do_next = equipment.load.with_type_ac
    return Finding(
        about=ABOUT,
        outcome=outcome,
        says=says,
        judges=Judges.FITNESS_FOR_DC,
        measured=f"type {device.type}" if known else "",
        measured_as=MeasuredAs.GIVEN,
        limit=f"type {equipment.least_type} or wider",
        do_next=do_next,
        field="device.type",
        sources=equipment.need.sources,
    )


def judge_by_load_rules(
    equipment: Equipment, device: Device, code: Code, shared: bool | None
) -> list[Finding]:
    """Return findings on the rating, and on sharing the device, where a rule names them.

    A device that does not protect by itself has none to be judged.
    """
    if not device.protects:
        return []
    findings: list[Finding] = []
    for rule in equipment.load.rules:
        if not rule.binds(code):
            continue
        if rule.rated_at_most is not None and device != Device():
            findings.append(rating_finding(rule, rule.rated_at_most, device.rated_residual_current))
        if rule.own_device and (shared is not None or device != Device()):
            findings.append(_sharing(rule, shared=shared))
    return findings


def rating_finding(rule: LoadRule, most: float, rated: float | None) -> Finding:
    """Return the finding on a rating [mA] against a rule that names the equipment."""
    outcome = _outcome_of_rating(rule, most, rated)
    do_next = f"Find out whether it is one of these: {rule.only_for}." if rule.only_for else ""
    return Finding(
        about="rated residual current",
        outcome=outcome,
        says=" ".join(part for part in (rule.says, rule.unasked) if part),
        judges=Judges.INSTALLATION_CODE,
        measured="" if rated is None else format_quantity(rated, "mA"),
        measured_as=MeasuredAs.GIVEN,
        limit=str(Limit("mA", at_most=most)),
        do_next=NO_RATING if rated is None else (do_next if outcome is Outcome.CANNOT_SAY else ""),
        field="device.rated_residual_current",
        sources=(rule.source,),
        numbers=None if rated is None else figure_numbers(rated, Limit("mA", at_most=most)),
    )


def _outcome_of_rating(rule: LoadRule, most: float, rated: float | None) -> Outcome:
    if rated is not None and rated <= most:
        return Outcome.PASS
    return Outcome.CANNOT_SAY if rated is None or rule.only_for else Outcome.FAIL


def _sharing(rule: LoadRule, *, shared: bool | None) -> Finding:
    outcome, measured, do_next = SHARING[shared]
    return Finding(
        about="a device of its own",
        outcome=outcome,
        says=rule.says if shared is not None else f"{SHARED_UNSAID} {rule.says}",
        judges=Judges.INSTALLATION_CODE,
        measured=measured,
        measured_as=MeasuredAs.GIVEN,
        do_next=do_next,
        field="shared",
        sources=(rule.source,),
    )


def narrower_types(equipment: Equipment, least: str, refused: frozenset[str]) -> list[str]:
    """Return the types that would serve under a condition not yet met, each with it in words."""
    entries = []
    for also in equipment.need.also:
        said = also.when in {MetBy.MAKER, MetBy.DECLARATION} and equipment.maker_type
        if said and equipment.meets(also) is False:
            continue  # its maker has spoken, and asks for more
        kept = [one for one in also.types if one not in refused and not covers(one, least)]
        if kept:
            entries.append(f"{in_words(kept)}, where {also.where}")
    return entries
