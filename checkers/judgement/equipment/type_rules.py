"""What a local code says of device types, for one kind of equipment on one day."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from checkers.domain.codes.registry import Code, TypeRule
from checkers.domain.device.device import DeviceType
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.equipment.type_order import ORDER, covers, greatest, least
from checkers.wording.book import part
from checkers.wording.finding import finding

ONLY_WHERE = "equipment.type-accepted-by-code-only-where"
NOT_ACCEPTED = "equipment.type-not-accepted-by-code"
AS_NEEDED = {
    Outcome.PASS: "equipment.type-as-code-asks",
    Outcome.FAIL: "equipment.type-not-as-code-asks",
    Outcome.CANNOT_SAY: "equipment.type-perhaps-as-code-asks",
}


def concerning(rules: Iterable[TypeRule], equipment: Equipment) -> tuple[TypeRule, ...]:
    """Return the rules that concern a kind of equipment, or all equipment."""
    return tuple(rule for rule in rules if _concerns(rule, equipment))


def other_means(code: Code, equipment: Equipment, day: date) -> TypeRule | None:
    """Return the rule of a code that protects equipment by other means than a device type."""
    rules = concerning(code.type_rules_on(day), equipment)
    return next((rule for rule in rules if rule.standing == "other-means"), None)


def _concerns(rule: TypeRule, equipment: Equipment) -> bool:
    if not rule.names_equipment:
        return True
    fed = not rule.supplies or equipment.supply in rule.supplies
    return fed and equipment.load.key in rule.loads


def raised(fitting: str, rules: Iterable[TypeRule], equipment: Equipment) -> str:
    """Return the least type that the rules accept, from the least that the circuit accepts.

    A type accepted only under a condition is passed over: that is the cautious answer.
    """
    for rule in rules:
        if rule.standing == "needed":
            also_serves = fitting in rule.also and bool(equipment.met)
            if fitting not in rule.types and not also_serves:
                fitting = _least_of(rule.types, fitting)
        elif rule.standing != "other-means" and fitting in rule.types:
            fitting = _least_of(set(ORDER) - rule.types, fitting)
    return fitting


def _least_of(types: Iterable[str], fitting: str) -> str:
    wider = [one for one in types if covers(one, fitting)]
    return least(wider) if wider else greatest([*types, fitting])


def refused(rules: Iterable[TypeRule]) -> frozenset[str]:
    """Return the types that the rules do not accept, or do not name where they name some."""
    types: set[str] = set()
    for rule in rules:
        if rule.standing == "not-accepted":
            types |= rule.types
        elif rule.standing == "needed":
            types |= set(ORDER) - rule.types - rule.also
    return frozenset(types)


def conditional(rules: Iterable[TypeRule], equipment: Equipment) -> list[tuple[str, str]]:
    """Return (type, condition) for types that the code accepts only under a condition."""
    if equipment.load.contains_converter:
        return []
    return [
        (kind, rule.where) for rule in rules if rule.standing == "only-where" for kind in rule.types
    ]


def judge_by_code(
    rules: Iterable[TypeRule], equipment: Equipment, fitted: str, *, upstream: bool | None = None
) -> list[Finding]:
    """Return a finding for each rule; with no known type, each only says what is asked.

    Inputs: upstream, whether every RCD upstream senses smooth DC; None where that is not said.
    """
    judged = (_judged(rule, equipment, fitted, upstream) for rule in rules)
    return [found for found in judged if found is not None]


def judge_by_code_alone(rules: Iterable[TypeRule], fitted: str) -> list[Finding]:
    """Return a finding for each rule against a type, where the equipment is not known."""
    against = [rule for rule in rules if not rule.names_equipment and fitted in rule.types]
    return [
        _finding(ONLY_WHERE, rule, Outcome.CANNOT_SAY, fitted)
        if rule.standing == "only-where"
        else _finding(NOT_ACCEPTED, rule, Outcome.FAIL, fitted)
        for rule in against
    ]


def _judged(
    rule: TypeRule, equipment: Equipment, fitted: str, upstream: bool | None
) -> Finding | None:
    if rule.standing == "other-means":
        return _finding("equipment.protected-by-other-means", rule, Outcome.CANNOT_SAY, fitted)
    if fitted == DeviceType.UNKNOWN:
        return _finding("equipment.type-missing-for-code", rule, Outcome.CANNOT_SAY, fitted)
    if rule.standing == "needed":
        outcome = _outcome_of_needed(rule, equipment, fitted, upstream)
        return _finding(AS_NEEDED[outcome], rule, outcome, fitted)
    if fitted not in rule.types:
        return None
    if rule.standing == "only-where" and not equipment.load.contains_converter:
        return _finding(ONLY_WHERE, rule, Outcome.CANNOT_SAY, fitted)
    return _finding(NOT_ACCEPTED, rule, Outcome.FAIL, fitted)


def _outcome_of_needed(
    rule: TypeRule, equipment: Equipment, fitted: str, upstream: bool | None
) -> Outcome:
    if fitted in rule.types:
        return _as_known(equipment.detection if rule.with_detection else True)
    if fitted in rule.also and rule.also_by_upstream:
        return _as_known(upstream)
    if fitted in rule.also:
        known = [equipment.meets(also) for also in equipment.need.also]
        return _as_known(True if True in known else None if None in known else False)
    named = least(rule.types)
    return Outcome.CANNOT_SAY if covers(fitted, named) else Outcome.FAIL


def _as_known(met: bool | None) -> Outcome:
    """Return how a condition stands: met, not met, or not known."""
    return {True: Outcome.PASS, False: Outcome.FAIL, None: Outcome.CANNOT_SAY}[met]


def _finding(code: str, rule: TypeRule, outcome: Outcome, fitted: str) -> Finding:
    known = fitted != DeviceType.UNKNOWN
    found = finding(
        code,
        outcome,
        Judges.INSTALLATION_CODE,
        {"rule": rule.says, "where": rule.where},
        measured=part("equipment.type", type=fitted) if known else "",
        measured_as=MeasuredAs.GIVEN,
        field="device.type",
        sources=(rule.citation,),
    )
    if found.do_next or not rule.also_where or outcome is Outcome.PASS:
        return found
    return replace(found, do_next=part("equipment.find-out-whether", whether=rule.also_where))
