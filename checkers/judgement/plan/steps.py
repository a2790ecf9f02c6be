"""The steps of a test plan, from the first look to the test button."""

from __future__ import annotations

from dataclasses import dataclass, replace

from checkers.domain.codes.registry import TypeRule
from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import DeviceType
from checkers.domain.device.readings import HALF_WAVES, Test, Waveform
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import citations
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
from checkers.judgement.plan.planned_tests import PlannedTest, planned_tests
from checkers.judgement.plan.words import (
    BEFORE_SMOOTH_DC,
    BY_HAND,
    CLAMP,
    CONNECT,
    DC_CLAMP,
    IF_IT_FAILS,
    INSPECT,
    LOOK,
    NO_AC_TEST,
    TYPE_CHECK,
    WHY,
    WRITE_DOWN,
    what_to_do,
)

ADVISED = "advised: common practice"
READ_RATING = "read the rating first"
MAKER_STATES_IT = "its maker states it"


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of a plan, as it is read aloud on site.

    `multiple` is of the rated residual current; `current` is what to set; `wait` is the time
    to leave before the step. Empty or None where a step has no such thing.
    """

    test: str
    do: str
    multiple: float | None = None
    current: Figure | None = None
    waveform: str = ""
    phase: str = ""
    loads: str = "off"
    limit: str = ""
    required_by: str
    standing: str
    wait: Figure | None = None
    connect: str = BY_HAND
    why: str
    write_down: str
    if_it_fails: str
    touch_voltage: Figure | None = None
    sources: tuple[Citation, ...] = ()


def steps_of(case: Case) -> list[Step]:
    """Return the steps for a device: look, compare, measure with loads on, test, press the button.

    A test whose current depends on a rating that is not known is left out.
    """
    tests = [one for test in planned_tests(case) for one in _steps(test, case)]
    return [_inspection(case), _type_check(case), *_clamp_steps(case), *tests]


def _inspection(case: Case) -> Step:
    return Step(
        test="inspection",
        do=" ".join(part for part in (INSPECT, LOOK.get(case.device.form, "")) if part),
        why="What cannot be read or seen later decides every current and limit below.",
        write_down="Place, type, rated residual current, delay, standard, and any damage.",
        if_it_fails="Do not test a damaged device: isolate it, and tell the person in charge.",
        required_by=ADVISED,
        standing="advised",
        loads="on",
    )


def _type_check(case: Case) -> Step:
    rules = [rule for rule in case.code.type_rules_on(case.day) if _concerns(rule, case)]
    places = tuple(dict.fromkeys(rule.citation for rule in rules))
    return Step(
        test="type-check",
        do=TYPE_CHECK,
        why=" ".join((NO_AC_TEST, *(rule.says for rule in rules))),
        write_down="What is connected, the type it calls for, and the type that is fitted.",
        if_it_fails="Say so in the record whatever the tests show, and have the device replaced.",
        required_by=f"rules of {_documents(places)}" if places else ADVISED,
        standing="required" if places else "advised",
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
        do="Measure the leakage with everything on and working.",
        why="Shows what flows with nothing wrong: it adds to every test made with loads on.",
        write_down="The current in mA, and whether the clamp's filter was on.",
        if_it_fails="Split the circuits over more devices, or find what leaks.",
        required_by=ADVISED,
        standing="advised",
        connect=CLAMP,
        loads="on",
        limit=READ_RATING if limit is None else str(Limit("mA", at_most=limit)),
        sources=citations(row),
    )


def _dc(case: Case) -> Step:
    row = tolerated_dc_row(case)
    tolerated = None if row is None else row.at_most(case.device.rated_residual_current)
    limit = "read the type first" if row is None else "none declared for this type"
    if tolerated is not None:
        limit = str(Limit("mA", at_most=tolerated))
    elif row is not None and not row.undeclared:
        limit = READ_RATING
    return Step(
        test="dc-residual",
        do="Measure the smooth DC with everything on and working.",
        why="Smooth DC through the device can blind it, while every test with loads off passes.",
        write_down="The smooth DC in mA, its direction, and what was running; “not measured” where "
        "the clamp is coarser, never 0.",
        if_it_fails="Find the equipment it comes from; fit a type that bears it, or remove it.",
        required_by=ADVISED,
        standing="advised",
        connect=DC_CLAMP,
        loads="on",
        limit=limit,
        sources=citations(row),
    )


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
    hint = "" if quarter is None or moved else _other_choice(quarter.when.current)
    waited = () if wait is None else (CONSTANTS["wait_between_delayed_tests"].citation,)
    return Step(
        test=test.test,
        do="",
        why=" ".join(part for part in (WHY[test.test, test.waveform], test.note) if part),
        write_down=WRITE_DOWN[test.test],
        if_it_fails=f"{IF_IT_FAILS[test.test]}{hint}",
        required_by=test.asked_by,
        standing=test.standing,
        connect=_connect(test, case),
        multiple=None if moved else test.multiple,
        current=None if current is None else Figure(current, "mA"),
        waveform=test.waveform,
        limit=limit.words or MAKER_STATES_IT,
        wait=wait,
        sources=tuple(dict.fromkeys((*test.sources, *limit.sources, *waited))),
    )


def _connect(test: PlannedTest, case: Case) -> str:
    """Return where to connect, and what smooth DC asks for before."""
    if test.test == Test.BUTTON:
        return BY_HAND
    place = CONNECT[case.device.form]
    return f"{BEFORE_SMOOTH_DC} {place}" if test.waveform == Waveform.SMOOTH_DC else place


def _other_choice(current: float | None) -> str:
    at = format_quantity(current or 0.0, "mA")
    return f" Where its maker declares the shortest time at {at}, repeat at {at} first."


def _wait(case: Case, test: PlannedTest) -> Figure | None:
    """Return the wait before a test of a delayed device, whose energy store must be empty."""
    if case.device.delay_class not in ("S", "set") or test.test == Test.BUTTON:
        return None
    return Figure(CONSTANTS["wait_between_delayed_tests"].value / 1000, "s")
