"""A reading near a limit is judged with the instrument's uncertainty, a bound by what it allows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.verdicts import Outcome
from checkers.judgement.limits.comparison import compare

UPPER = Limit("ms", at_most=300.0)
LOWER = Limit("ms", at_least=130.0)


def reading(value: float, said: Said = Said.FIGURE) -> Measured:
    """Return a time [ms] as it would have been parsed."""
    return Measured(said, value, "ms")


@pytest.mark.parametrize(
    ("value", "outcome"),
    [(200, "pass"), (285, "borderline"), (300, "borderline"), (315, "borderline"), (340, "fail")],
)
def test_a_figure_passes_or_fails_only_outside_the_guard_band(value: float, outcome: str) -> None:
    """Within the uncertainty of the limit the verdict is borderline on both sides."""
    assert outcome == compare(reading(value), UPPER, 30.0, 0.95).outcome


@pytest.mark.parametrize(
    ("limit", "said", "value", "outcome"),
    [
        (UPPER, Said.MORE_THAN, 300, "fail"),
        (UPPER, Said.MORE_THAN, 299, "cannot-say"),
        (UPPER, Said.LESS_THAN, 300, "pass"),
        (UPPER, Said.LESS_THAN, 400, "cannot-say"),
        (LOWER, Said.MORE_THAN, 130, "pass"),
        (LOWER, Said.MORE_THAN, 100, "cannot-say"),
        (LOWER, Said.LESS_THAN, 130, "fail"),
        (LOWER, Said.LESS_THAN, 140, "cannot-say"),
    ],
)
def test_a_bound_decides_only_where_all_it_allows_is_on_one_side(
    limit: Limit, said: Said, value: float, outcome: str
) -> None:
    """A censored value never passes on a guess."""
    assert outcome == compare(reading(value, said), limit, 30.0, 0.95).outcome


@given(st.floats(1, 1000), st.floats(0.1, 100))
def test_a_figure_over_the_limit_never_passes(value: float, uncertainty: float) -> None:
    """Whatever the uncertainty, a pass lies inside the limit."""
    outcome = compare(reading(value), UPPER, uncertainty, 0.95).outcome

    assert outcome is not Outcome.PASS or value < 300
    assert outcome is not Outcome.FAIL or value > 300


@given(st.floats(1, 299), st.floats(0.1, 50), st.floats(0.1, 50))
def test_more_uncertainty_never_makes_a_pass(value: float, small: float, more: float) -> None:
    """A worse instrument cannot turn borderline into a pass."""
    better = compare(reading(value), UPPER, small, 0.95).outcome
    worse = compare(reading(value), UPPER, small + more, 0.95).outcome

    assert worse is not Outcome.PASS or better is Outcome.PASS
