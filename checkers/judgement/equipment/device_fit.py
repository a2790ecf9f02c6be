"""Is this device fit for this equipment: by its circuit, its maker, and the rules naming it?"""

from __future__ import annotations

from collections.abc import Mapping

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device, DeviceType, Form
from checkers.domain.limits.limit import Limit
from checkers.domain.loads.kinds import Also, LoadRule, MetBy
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.equipment.equipment import NO_DC, SILENT, Equipment
from checkers.judgement.equipment.type_fit import Fit, Why, fit_of
from checkers.judgement.equipment.type_order import covers, in_words
from checkers.judgement.limits.numbers import figure_numbers
from checkers.wording.book import part
from checkers.wording.finding import finding

STATED = frozenset({MetBy.MAKER, MetBy.DECLARATION})
NOT_JUDGED: Mapping[str, str] = {
    Form.MONITOR: "equipment.monitor-for-equipment",
    Form.RDC_DD: "equipment.dc-detection-for-equipment",
}
NARROW: Mapping[Why, str] = {
    Why.CONTRADICTED: "equipment.maker-contradicts-circuit",
    Why.DETECTION_ELSEWHERE: "equipment.dc-detection-elsewhere",
    Why.MAKER_ASKS_MORE: "equipment.type-less-than-maker-asks",
    Why.CONDITION_OPEN: "equipment.type-condition-open",
    Why.CONDITION_NOT_MET: "equipment.type-condition-not-met",
    Why.TOO_NARROW: "equipment.type-too-narrow",
}
SHARING: Mapping[bool | None, tuple[str, Outcome, str]] = {
    True: ("equipment.device-shared", Outcome.FAIL, "equipment.feeds-others"),
    False: ("equipment.device-of-its-own", Outcome.PASS, "equipment.feeds-nothing-else"),
    None: ("equipment.device-sharing-not-said", Outcome.CANNOT_SAY, ""),
}


def judge_fit(equipment: Equipment, device: Device) -> Finding:
    """Return the finding on a device's type for a piece of equipment."""
    code = NOT_JUDGED.get(device.form)
    if code or device.type == DeviceType.UNKNOWN:
        code, needs = code or "equipment.type-missing-for-equipment", equipment.need.says
        if equipment.contradicted:
            needs = part("equipment.maker-contradicts-and-needs", needs=needs)
        return _finding(equipment, device, code, Outcome.CANNOT_SAY, {"needs": needs})
    fit = fit_of(device.type, equipment)
    facts = {
        "type": device.type,
        "needs": equipment.need.says,
        "least": equipment.least_type,
        "maker_type": equipment.maker_type,
        "where": _conditions(fit, "equipment.or-where"),
        "whether": _conditions(fit, "equipment.or-whether"),
        "because": because(equipment, fit.conditions[0]) if fit.conditions else "",
    }
    return _finding(equipment, device, _code(equipment, fit), fit.outcome, facts)


def _conditions(fit: Fit, joined_by: str) -> str:
    return part(joined_by).join(also.where for also in fit.conditions)


def _code(equipment: Equipment, fit: Fit) -> str:
    if fit.outcome is not Outcome.PASS:
        return NARROW[fit.why]
    if fit.why is Why.CONDITION_MET:
        stated = fit.conditions[0].when in STATED
        serves = "equipment.type-serves-under-condition"
        return "equipment.type-serves-as-maker-states" if stated else serves
    silent = equipment.maker_says == SILENT and equipment.load.contains_converter
    return "equipment.type-sees-all-maker-silent" if silent else "equipment.type-sees-all"


def because(equipment: Equipment, met: Also) -> str:
    """Return the condition that is met, in the words of what was said of the equipment."""
    spoke_of_dc = met.when == MetBy.DECLARATION and equipment.maker_says == NO_DC
    return part("equipment.no-dc-stated") if spoke_of_dc else met.where


def _finding(
    equipment: Equipment, device: Device, code: str, outcome: Outcome, facts: Mapping[str, object]
) -> Finding:
    known = device.type != DeviceType.UNKNOWN
    without_type_ac = outcome is Outcome.FAIL and device.type == DeviceType.AC
    return finding(
        code,
        outcome,
        Judges.FITNESS_FOR_DC,
        facts,
        measured=part("equipment.type", type=device.type) if known else "",
        measured_as=MeasuredAs.GIVEN,
        limit=part("equipment.type-or-wider", type=equipment.least_type),
        field="device.type",
        sources=equipment.need.sources,
        **({"do_next": equipment.load.with_type_ac} if without_type_ac else {}),
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
    code, outcome = _rating_found(rule, most, rated)
    return finding(
        code,
        outcome,
        Judges.INSTALLATION_CODE,
        {
            "rule": " ".join(one for one in (rule.says, rule.unasked) if one),
            "only_for": rule.only_for,
        },
        measured="" if rated is None else format_quantity(rated, "mA"),
        measured_as=MeasuredAs.GIVEN,
        limit=str(Limit("mA", at_most=most)),
        field="device.rated_residual_current",
        sources=(rule.source,),
        numbers=None if rated is None else figure_numbers(rated, Limit("mA", at_most=most)),
    )


def _rating_found(rule: LoadRule, most: float, rated: float | None) -> tuple[str, Outcome]:
    if rated is None:
        return "equipment.rating-missing-for-rule", Outcome.CANNOT_SAY
    if rated <= most:
        return "equipment.rating-as-rule-asks", Outcome.PASS
    if rule.only_for:
        return "equipment.rating-over-rule-for-some", Outcome.CANNOT_SAY
    return "equipment.rating-over-rule", Outcome.FAIL


def _sharing(rule: LoadRule, *, shared: bool | None) -> Finding:
    code, outcome, measured = SHARING[shared]
    return finding(
        code,
        outcome,
        Judges.INSTALLATION_CODE,
        {"rule": rule.says},
        measured=part(measured) if measured else "",
        measured_as=MeasuredAs.GIVEN,
        field="shared",
        sources=(rule.source,),
    )


def narrower_types(equipment: Equipment, least: str, refused: frozenset[str]) -> list[str]:
    """Return the types that would serve under a condition not yet met, each with it in words."""
    entries = []
    for also in equipment.need.also:
        said = also.when in STATED and equipment.maker_type
        if said and equipment.meets(also) is False:
            continue  # its maker has spoken, and asks for more
        kept = [one for one in also.types if one not in refused and not covers(one, least)]
        if kept:
            kinds = in_words(kept)
            entries.append(part("equipment.type-where", type=kinds, where=also.where))
    return entries
