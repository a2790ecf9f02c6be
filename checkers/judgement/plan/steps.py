"""The steps of a test plan, from the first look to the test button."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from typing import Any

from checkers.domain.codes.registry import TypeRule
from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import DeviceType
from checkers.domain.device.readings import HALF_WAVES, Test, Waveform
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row, citations
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Figure
from checkers.judgement.case import Case
from checkers.judgement.dc.fitness import tolerated_dc_row
from checkers.judgement.leakage.standing_leakage import budget_of
from checkers.judgement.plan.limits import (
    PlannedLimit,
    current_of,
    limit_of,
    quarter_row,
    risen_to,
)
from checkers.judgement.plan.planned_tests import (
    ADVISED,
    REQUIRED,
    PlannedTest,
    common_practice,
    planned_tests,
)
from checkers.judgement.plan.words import (
    CONNECT,
    IF_IT_FAILS,
    LOOK,
    WHY,
    WRITE_DOWN,
    told,
    what_to_do,
)
from checkers.wording.book import part


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of a plan, as it is read aloud on site.

    `multiple` is of the rated residual current; `current` is what to set; `wait` is the time
    to leave before the step. Empty or None where a step has no such thing. `limits` are the
    figures behind `limit`, for what asks of the step later: a reader has them in words.
    """

    test: str
    do: str
    multiple: float | None = None
    current: Figure | None = None
    waveform: str = ""
    phase: str = ""
    loads: str = "off"
    limit: str = ""
    limits: tuple[Limit, ...] = ()
    required_by: str
    standing: str
    wait: Figure | None = None
    connect: str
    why: str
    write_down: str
    if_it_fails: str
    touch_voltage: Figure | None = None
    sources: tuple[Citation, ...] = ()

    @property
    def told(self) -> dict[str, Any]:
        """The step as an answer tells it."""
        return {one.name: getattr(self, one.name) for one in fields(self) if one.name != "limits"}


def steps_of(case: Case) -> list[Step]:
    """Return the steps for a device: look, compare, measure with loads on, test, press the button.

    A test whose current depends on a rating that is not known is left out.
    """
    tests = [one for test in planned_tests(case) for one in _steps(test, case)]
    return [_inspection(case), _type_check(case), *_clamp_steps(case), *tests]


def _inspection(case: Case) -> Step:
    look = LOOK.get(case.device.form)
    return Step(
        test="inspection",
        do=told("plan.inspect", *([look] if look else [])),
        why=part("plan.why-inspect"),
        write_down=part("plan.write-down-inspection"),
        if_it_fails=part("plan.if-damaged"),
        required_by=common_practice(ADVISED),
        standing=ADVISED,
        connect=part("plan.nothing-to-connect"),
        loads="on",
    )


def _type_check(case: Case) -> Step:
    rules = [rule for rule in case.code.type_rules_on(case.day) if _concerns(rule, case)]
    places = tuple(dict.fromkeys(rule.citation for rule in rules))
    by_rules = part("plan.rules-of", documents=_documents(places))
    return Step(
        test="type-check",
        do=part("plan.compare-type"),
        why=" ".join((part("plan.no-ac-test"), *(rule.says for rule in rules))),
        write_down=part("plan.write-down-type"),
        if_it_fails=part("plan.if-type-is-wrong"),
        required_by=by_rules if places else common_practice(ADVISED),
        standing=REQUIRED if places else ADVISED,
        connect=part("plan.nothing-to-connect"),
        loads="on",
        sources=places,
    )


def _documents(places: tuple[Citation, ...]) -> str:
    return ", ".join(dict.fromkeys(place.document for place in places))


def _concerns(rule: TypeRule, case: Case) -> bool:
    """Tell whether a rule on types may decide about the device: by its load, or by its type."""
    if not case.device.protects:
        return False
    kind = case.device.type
    return rule.standing == "needed" or kind in (*rule.types, DeviceType.UNKNOWN)


def _clamp_steps(case: Case) -> list[Step]:
    """Return the measurements with the loads on, for devices that a load can disturb."""
    if not case.device.protects:
        return []
    disturbed = case.device.has(Ability.STANDING_DC)
    return [_leakage(case), _dc(case)] if disturbed else [_leakage(case)]


def _leakage(case: Case) -> Step:
    budget = budget_of(case)
    limit = budget.no_trip if budget.limit is None else budget.limit
    row = budget.limit_row or (budget.band.rows[0] if budget.band else None)
    return Step(
        test="standing-leakage",
        do=part("plan.measure-leakage"),
        why=part("plan.why-leakage"),
        write_down=part("plan.write-down-leakage"),
        if_it_fails=part("plan.if-leakage-is-high"),
        required_by=common_practice(ADVISED),
        standing=ADVISED,
        connect=part("plan.clamp"),
        loads="on",
        limit=part("plan.read-rating-first") if limit is None else str(Limit("mA", at_most=limit)),
        sources=citations(row),
    )


def _dc(case: Case) -> Step:
    row = tolerated_dc_row(case)
    return Step(
        test="dc-residual",
        do=part("plan.measure-smooth-dc"),
        why=part("plan.why-smooth-dc"),
        write_down=part("plan.write-down-smooth-dc"),
        if_it_fails=part("plan.if-smooth-dc-is-high"),
        required_by=common_practice(ADVISED),
        standing=ADVISED,
        connect=told("plan.clamp", "plan.clamp-reads-dc"),
        loads="on",
        limit=_dc_limit(row, case),
        sources=citations(row),
    )


def _dc_limit(row: Row | None, case: Case) -> str:
    """Return the smooth DC that a device bears, in words, or what to find out first."""
    if row is None:
        return part("plan.read-type-first")
    tolerated = row.at_most(case.device.rated_residual_current)
    if tolerated is not None:
        return str(Limit("mA", at_most=tolerated))
    return part("plan.none-declared" if row.undeclared else "plan.read-rating-first")


def _steps(test: PlannedTest, case: Case) -> list[Step]:
    """Return a planned test as a step for each start or direction, or none without a current.

    On a half wave the current to set comes from the limit table: without one, no step.
    """
    current = risen_to(test, case) if test.test == Test.RAMP else current_of(test, case)
    limit = limit_of(test, case)
    from_table = test.test == Test.RAMP or test.waveform in HALF_WAVES
    if test.test != Test.BUTTON and (current is None or (from_table and not limit.words)):
        return []
    first = _step(test, case, current, limit)
    return [_from(first, test, phase) for phase in test.phases or ("",)]


def _from(step: Step, test: PlannedTest, phase: str) -> Step:
    """Return a step with its start or direction."""
    current = None if step.current is None else step.current.value
    lasting = test.lasting or JUDGING.no_trip_lasts
    do = what_to_do(test.test, test.waveform, phase, current, lasting)
    return replace(step, do=do, phase=phase)


def _step(test: PlannedTest, case: Case, current: float | None, limit: PlannedLimit) -> Step:
    quarter, wait = quarter_row(test, case), _wait(case, test)
    moved = quarter is not None and case.device.quarter_ampere
    hint = [] if quarter is None or moved else [_other_choice(quarter.when.current)]
    waited = () if wait is None else (CONSTANTS["wait_between_delayed_tests"].citation,)
    return Step(
        test=test.test,
        do="",
        why=" ".join((part(WHY[test.test, test.waveform]), *([test.note] if test.note else []))),
        write_down=part(WRITE_DOWN[test.test]),
        if_it_fails=" ".join((told(*IF_IT_FAILS[test.test]), *hint)),
        required_by=test.asked_by,
        standing=test.standing,
        connect=_connect(test, case),
        multiple=None if moved else test.multiple,
        current=None if current is None else Figure(current, "mA"),
        waveform=test.waveform,
        limit=limit.words or part("plan.maker-states-it"),
        limits=limit.limits,
        wait=wait,
        sources=tuple(dict.fromkeys((*test.sources, *limit.sources, *waited))),
    )


def _connect(test: PlannedTest, case: Case) -> str:
    """Return where to connect, and what smooth DC asks for before."""
    if test.test == Test.BUTTON:
        return part("plan.nothing-to-connect")
    before = ["plan.before-smooth-dc"] if test.waveform == Waveform.SMOOTH_DC else []
    return told(*before, *CONNECT[case.device.form])


def _other_choice(current: float | None) -> str:
    return part("plan.other-choice", at=format_quantity(current or 0.0, "mA"))


def _wait(case: Case, test: PlannedTest) -> Figure | None:
    """Return the wait before a test of a delayed device, whose energy store must be empty."""
    if case.device.delay_class not in ("S", "set") or test.test == Test.BUTTON:
        return None
    return Figure(CONSTANTS["wait_between_delayed_tests"].value / 1000, "s")
