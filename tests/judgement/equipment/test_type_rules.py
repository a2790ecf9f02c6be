"""Rules of a local code on device types, on rules made up for the purpose."""

from __future__ import annotations

import dataclasses

import pytest

from checkers.domain.codes.registry import CODES, TypeRule
from checkers.domain.loads.registry import LOADS
from checkers.domain.verdicts import Outcome
from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.equipment.type_rules import (
    concerning,
    conditional,
    judge_by_code,
    raised,
    refused,
)

PLAIN = TypeRule(
    document="trade-practice",
    edition="made up",
    clause="1",
    evidence="common-practice",
    from_day=None,
    until_day=None,
    note="",
    types=frozenset({"AC"}),
    standing="not-accepted",
    loads=frozenset(),
    supplies=frozenset(),
    where="",
    also=frozenset(),
    also_where="",
    says="Type AC is not accepted.",
)
ONLY_WHERE = dataclasses.replace(PLAIN, standing="only-where", where="it heats")
NEEDED = dataclasses.replace(
    PLAIN,
    standing="needed",
    types=frozenset({"B", "B+"}),
    loads=frozenset({"ev-charge-point"}),
    also=frozenset({"A", "F"}),
    also_where="it detects DC",
)


def equipment(key: str, **known: object) -> Equipment:
    """Equipment with nothing known but what is given."""
    load = LOADS[key]
    asked = {
        "supply": load.usual_supply,
        "separation": "unknown",
        "maker_says": "silent",
        "detection": None,
    }
    return Equipment(load, **{**asked, **known})  # type: ignore[arg-type]  # the tests give the right kinds


def test_a_rule_on_named_equipment_concerns_no_other() -> None:
    """A rule on charge points is not asked of a heater; a rule on types is asked of all."""
    rules = (PLAIN, NEEDED)

    assert concerning(rules, equipment("resistive")) == (PLAIN,)
    assert concerning(rules, equipment("ev-charge-point")) == (PLAIN, NEEDED)


def test_a_rule_for_one_supply_is_silent_about_another() -> None:
    """A rule on three-phase sockets does not reach a single-phase one."""
    rule = dataclasses.replace(NEEDED, supplies=frozenset({"three-phase"}))

    assert concerning((rule,), equipment("ev-charge-point", supply="single-phase")) == ()


def test_an_unaccepted_type_raises_the_answer() -> None:
    """Where AC is not accepted, or only under a condition, the answer is the next type up."""
    heater = equipment("resistive")

    assert raised("AC", (PLAIN,), heater) == "A"
    assert raised("AC", (ONLY_WHERE,), heater) == "A"
    assert raised("F", (PLAIN,), heater) == "F"


def test_a_needed_type_raises_the_answer_until_its_condition_is_met() -> None:
    """Type A is raised to B at a charge point without detection, and kept with it."""
    assert raised("A", (NEEDED,), equipment("ev-charge-point", detection=False)) == "B"
    assert raised("A", (NEEDED,), equipment("ev-charge-point", detection=True)) == "A"


def test_types_the_rules_leave_out_are_refused() -> None:
    """What is not accepted, and what a list of needed types does not name."""
    assert refused((PLAIN,)) == {"AC"}
    assert refused((NEEDED,)) == {"AC"}
    assert refused((ONLY_WHERE,)) == frozenset()


def test_a_condition_is_offered_only_where_it_can_hold() -> None:
    """Equipment with a converter cannot have a load current free of DC."""
    assert conditional((ONLY_WHERE,), equipment("resistive")) == [("AC", "it heats")]
    assert conditional((ONLY_WHERE,), equipment("led-lighting")) == []


@pytest.mark.parametrize(
    ("rule", "key", "known", "fitted", "expected"),
    [
        (PLAIN, "resistive", {}, "AC", Outcome.FAIL),
        (ONLY_WHERE, "resistive", {}, "AC", Outcome.CANNOT_SAY),
        (ONLY_WHERE, "led-lighting", {}, "AC", Outcome.FAIL),
        (NEEDED, "ev-charge-point", {}, "B", Outcome.PASS),
        (NEEDED, "ev-charge-point", {"detection": True}, "A", Outcome.PASS),
        (NEEDED, "ev-charge-point", {"detection": False}, "A", Outcome.FAIL),
        (NEEDED, "ev-charge-point", {}, "AC", Outcome.FAIL),
        (NEEDED, "ev-charge-point", {}, "unknown", Outcome.CANNOT_SAY),
    ],
)
def test_each_rule_gives_its_finding(
    rule: TypeRule, key: str, known: dict[str, object], fitted: str, expected: Outcome
) -> None:
    """Not accepted, accepted under a condition, needed, or needed unless a condition is met."""
    found = judge_by_code((rule,), equipment(key, **known), fitted)

    assert [one.outcome for one in found] == [expected]
    assert found[0].sources == (rule.citation,)


def test_a_type_the_rule_does_not_speak_of_gives_no_finding() -> None:
    """A rule against type AC has nothing to say of a type A."""
    assert judge_by_code((PLAIN,), equipment("resistive"), "A") == []


def test_the_equipment_named_by_every_code_exists() -> None:
    """Every key in a rule of a code is an entry of the catalogue, with that supply."""
    for code in CODES.values():
        for rule in code.type_rules:
            assert rule.loads <= set(LOADS), code.key
            assert all(rule.supplies <= set(LOADS[key].circuits) for key in rule.loads)
