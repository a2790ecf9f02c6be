"""Worse knowledge never makes a pass: less exact, or left out, in every checker."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers import run
from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker
from checkers.domain.inputs.fields import Input, Kind
from checkers.domain.verdicts import Outcome, worst
from tests.catalogue.properties.worse_knowledge import (
    Path,
    Request,
    amounts,
    inputs_by_name,
    name_of,
    paths_in,
    values_for,
    with_value,
    without,
)

# These pass nothing of their own, and take a while.
SLOW = ("explain", "practice")
EVERY = pytest.mark.parametrize("checker", CHECKERS, ids=[one.slug for one in CHECKERS])
DRAWN = pytest.mark.parametrize(
    "checker",
    [one for one in CHECKERS if one.slug not in SLOW],
    ids=[one.slug for one in CHECKERS if one.slug not in SLOW],
)
QUICK = settings(deadline=None, max_examples=15, derandomize=True)
SEEN = {f"circuit.{one}" for one in ("dc_residual", "standing_leakage", "seen_to_open")}
# That it is TT, and its electrode's resistance, make the finding on the disconnection time.
SEEN |= {"circuit.system", "circuit.electrode_resistance"}
# What was measured, seen or declared makes a finding of its own: left out, that finding goes. So
# does an entry of a list, and what is asked of a device where the question is about another thing.
EVIDENCE: dict[str, set[str]] = {
    "readings": {*SEEN, "readings"},
    "explain": {*SEEN, "readings"},
    "schedule": SEEN,
    "over-the-years": {"history"},
    "series": {"devices", "devices.below", "loads"},
    "leakage-budget": {"items", "measured", "insulation_resistance"},
    "type-for-load": {"maker_says"},
    "dc-bias": {"own_trip_current"},
    "demonstration": {"own_trip_current", "device.type", "device.rated_residual_current"},
}
# A change is what a good instrument shows: a worse one does not see it.
SHOWN_BY_EXACTNESS = ("change of ",)


NAMED = {one.slug: dict(inputs_by_name(one.inputs)) for one in CHECKERS}


def named(checker: Checker) -> dict[str, Input]:
    """Return the inputs of a checker by name."""
    return NAMED[checker.slug]


def uncertainties(checker: Checker) -> list[str]:
    """Return the names of the inputs of a checker that say how exact something is."""
    return [name for name in named(checker) if name.endswith("uncertainty")]


def outcome(checker: Checker, request: Request) -> str:
    """Return the outcome of a request, or the kind of reply."""
    reply = run(checker.slug, request)
    if reply["kind"] != "result":
        return str(reply["kind"])
    found = [
        Outcome(one["outcome"])
        for one in reply["findings"]
        if not one["about"].startswith(SHOWN_BY_EXACTNESS)
    ]
    return worst(found).value


@st.composite
def requests(draw: st.DrawFn, checker: Checker) -> Request:
    """Draw an example of a checker with a few of its inputs changed."""
    request: Request = dict(draw(st.sampled_from(checker.examples)).request)
    for _ in range(draw(st.integers(0, 4))):
        places = [
            (path, named(checker)[name_of(path)])
            for path in paths_in(request)
            if name_of(path) in named(checker) and isinstance(path[-1], str)
        ]
        places += [
            (tuple(name.split(".")), one)
            for name, one in named(checker).items()
            if not any(name.startswith(f"{many}.") for many in lists(checker))
        ]
        path, one = draw(st.sampled_from(places))
        values = values_for(one)
        if not values.is_empty:
            request = with_value(request, path, draw(values))
    return request


def lists(checker: Checker) -> list[str]:
    """Return the names of the inputs of a checker that are lists."""
    return [name for name, one in named(checker).items() if one.spec.kind is Kind.MANY]


def worsened(found: list[str]) -> list[str]:
    """Return what turned into a pass, or improved more than a guard band allows, on the way."""
    wrong = []
    for before, after in pairwise(found):
        if after == "pass" and before != "pass":
            wrong.append(f"{before} became pass")
        if before == "fail" and after == "cannot-say":
            wrong.append("fail became cannot-say")
    return wrong


@EVERY
def test_a_less_exact_instrument_never_makes_a_pass(checker: Checker) -> None:
    """As an uncertainty grows, a fail becomes borderline at most, and nothing becomes a pass."""
    for name in uncertainties(checker):
        steps = amounts(named(checker)[name].spec.quantity)
        steps = steps[::5] if checker.slug in SLOW else steps
        path: Path = tuple(name.split("."))
        for example in checker.examples:
            grown = [with_value(dict(example.request), path, one) for one in steps]
            found = [outcome(checker, one) for one in grown]
            assert not worsened(found), (name, example.title, found)


@DRAWN
@QUICK
@given(data=st.data())
def test_a_less_exact_instrument_never_makes_a_pass_of_any_request(
    checker: Checker, data: st.DataObject
) -> None:
    """The same holds for requests drawn at random."""
    names = uncertainties(checker)
    if not names:
        return
    request = data.draw(requests(checker))
    name = data.draw(st.sampled_from(names))
    steps = amounts(named(checker)[name].spec.quantity)
    grown = [with_value(request, tuple(name.split(".")), one) for one in steps]
    found = [outcome(checker, one) for one in grown]
    assert not worsened(found), (name, request, found)


def made_a_pass(checker: Checker, request: Request) -> list[str]:
    """Return the inputs that, left out, turn a request into a pass and are not named for it."""
    if outcome(checker, request) not in ("fail", "borderline", "cannot-say"):
        return []
    evidence = EVIDENCE.get(checker.slug, set())
    found = []
    for path in paths_in(request):
        less = without(request, path)
        if name_of(path) not in evidence and outcome(checker, less) == "pass":
            named_for_it = {one["field"] for one in run(checker.slug, less)["assumed"]}
            if not leaves(request, path) <= named_for_it | evidence:
                found.append(name_of(path))
    return found


def leaves(request: Request, path: Path) -> set[str]:
    """Return the names of the values at a place and within it."""
    within = [one for one in paths_in(request) if one[: len(path)] == path]
    return {name_of(one) for one in within if not any(o[:-1] == one for o in within)}


@EVERY
def test_an_input_left_out_never_makes_a_pass(checker: Checker) -> None:
    """Unless it is evidence of its own, or the reply names what was taken in its place."""
    for example in checker.examples:
        assert not made_a_pass(checker, dict(example.request)), example.title


@DRAWN
@QUICK
@given(data=st.data())
def test_an_input_left_out_never_makes_a_pass_of_any_request(
    checker: Checker, data: st.DataObject
) -> None:
    """The same holds for requests drawn at random."""
    request = data.draw(requests(checker))
    assert not made_a_pass(checker, request), request
