"""The worst combination of leakages, against every combination tried one by one."""

from __future__ import annotations

from cmath import rect
from collections.abc import Iterator
from itertools import product
from math import radians

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.judgement.leakage.phasors import Part, all_on, at_least, greatest, may_cancel

# Lines a third of a period apart; capacitive current leads its voltage by a quarter.
LINES = {"L1": 0.0, "L2": -120.0, "L3": 120.0}
NATURES = {"resistive": [0.0], "capacitive": [90.0], "unknown": [0.0, 45.0, 90.0]}
CURRENTS = st.sampled_from([0.5, 1.0, 2.0, 3.5])
PARTS = st.builds(
    Part,
    CURRENTS,
    st.integers(1, 2),
    st.sampled_from(list(NATURES)),
    st.sampled_from([*LINES, "unknown", "three-phase"]),
)
KNOWN = st.builds(
    Part,
    CURRENTS,
    st.integers(1, 3),
    st.sampled_from(["resistive", "capacitive"]),
    st.sampled_from(list(LINES)),
)


def units_of(parts: list[Part]) -> list[list[tuple[str, float, float]]]:
    """Return each single item with all it may be: line, angle to its line, current [mA]."""
    found = []
    for part in parts:
        lines = [part.line] if part.line != "unknown" else list(LINES)
        options = [(line, angle, part.each) for line in lines for angle in NATURES[part.nature]]
        found += [options] * part.count
    return found


def completions(parts: list[Part]) -> Iterator[tuple[tuple[str, float, float], ...]]:
    """Yield everything the items may be; items alike have the same nature."""
    for chosen in product(*units_of(parts)):
        at, alike = 0, True
        for part in parts:
            alike &= len({angle for _, angle, _ in chosen[at : at + part.count]}) == 1
            at += part.count
        if alike:
            yield chosen


def worst(units: tuple[tuple[str, float, float], ...]) -> float:
    """Return the greatest sum [mA] over what is on, with every line there or one missing.

    A three-phase item leaks nothing while its lines are there, and with one missing what its two
    others make together, which is the current of the missing one turned round.
    """
    sums = [0.0]
    for missing in ("", *LINES):
        for on in product((True, False), repeat=len(units)):
            total = 0j
            for (line, angle, current), is_on in zip(units, on, strict=True):
                if is_on and line == "three-phase" and missing:
                    total -= rect(current, radians(LINES[missing] + angle))
                elif is_on and line not in ("three-phase", missing):
                    total += rect(current, radians(LINES[line] + angle))
            sums.append(abs(total))
    return max(sums)


@settings(deadline=None, max_examples=150)
@given(st.lists(KNOWN, min_size=1, max_size=3))
def test_what_is_known_in_full_is_worked_out_exactly(parts: list[Part]) -> None:
    """The most and the least that must be are the worst combination itself."""
    (units,) = completions(parts)

    assert worst(units) == pytest.approx(greatest(parts), abs=1e-9)
    assert worst(units) == pytest.approx(at_least(parts), abs=1e-9)


@settings(deadline=None, max_examples=150)
@given(st.lists(PARTS, min_size=1, max_size=2))
def test_no_combination_lies_outside_the_bounds(parts: list[Part]) -> None:
    """Whatever the lines and natures are: never above the most, never below the least."""
    every = [worst(units) for units in completions(parts)]

    assert max(every) <= greatest(parts) + 1e-9
    assert min(every) >= at_least(parts) - 1e-9


@settings(deadline=None, max_examples=100)
@given(st.lists(PARTS, min_size=1, max_size=6), PARTS)
def test_one_more_never_lowers_either_bound(parts: list[Part], more: Part) -> None:
    """It may stay switched off."""
    assert greatest([*parts, more]) >= greatest(parts) - 1e-9
    assert at_least([*parts, more]) >= at_least(parts) - 1e-9


@settings(deadline=None, max_examples=100)
@given(st.lists(PARTS, min_size=1, max_size=6))
def test_the_sum_of_all_is_the_most_of_items_without_a_line(parts: list[Part]) -> None:
    """Nothing is ever above the arithmetic sum, and alike items without a line reach it."""
    total = sum(one.each * one.count for one in parts)
    alike = [Part(one.each, one.count, "capacitive", "unknown") for one in parts]

    assert greatest(parts) <= total + 1e-9
    assert greatest(alike) == pytest.approx(total)
    assert at_least(parts) <= greatest(parts) + 1e-9


def test_a_balanced_sum_is_nothing_and_decides_nothing() -> None:
    """Three alike on three lines cancel, and one of them alone does not."""
    parts = [Part(4.0, 1, "capacitive", line) for line in LINES]

    assert all_on(parts) == pytest.approx(0.0, abs=1e-9)
    assert greatest(parts) == pytest.approx(4.0)
    assert may_cancel(parts)


def test_without_a_line_there_is_no_sum_of_all() -> None:
    """One line that is not told leaves it open; three-phase equipment is balanced."""
    assert all_on([Part(1.0, 1, "capacitive", "unknown")]) is None
    assert all_on([Part(5.0, 2, "unknown", "three-phase")]) == 0.0


def test_one_item_cancels_nothing() -> None:
    """Wherever it is, a clamp sees it; two that may be on two lines it may not."""
    assert not may_cancel([Part(1.0, 1, "unknown", "unknown")])
    assert not may_cancel([Part(1.0, 9, "unknown", "L2")])
    assert may_cancel([Part(1.0, 2, "unknown", "unknown")])
    assert may_cancel([Part(1.0, 1, "unknown", "three-phase")])
