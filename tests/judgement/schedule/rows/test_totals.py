"""Totals count every row once and every device once."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest

from checkers.domain.verdicts import Outcome
from checkers.judgement.schedule.rows.entry import RowKind
from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.surveys import SURVEYS
from checkers.judgement.schedule.rows.totals import Totals, share_interval


@given(of=st.integers(1, 5000), part=st.floats(0, 1))
@settings(deadline=None)
def test_the_interval_is_that_of_scipy(of: int, part: float) -> None:
    """SciPy's score interval for a binomial share, computed independently."""
    count = round(part * of)
    expected = binomtest(count, of).proportion_ci(0.95, method="wilson")

    assert (expected.low, expected.high) == pytest.approx(share_interval(count, of), abs=1e-9)


def test_a_survey_share_agrees_with_its_own_count() -> None:
    """207 of 3231 devices are 6.4 % (the Austrian survey states both)."""
    (survey,) = (one for one in SURVEYS if one.sample == 3231)

    assert survey.failed == pytest.approx(207 / 3231, abs=5e-5)


def row(kind: RowKind, outcome: Outcome | None = None) -> Row:
    """Return a row of a kind."""
    return Row(1, kind, (), outcome=outcome)


def test_a_repeated_device_is_counted_once() -> None:
    """Rows that only name it again do not count as devices."""
    totals = Totals()
    totals.add(row(RowKind.DEVICE, Outcome.PASS))
    totals.add(row(RowKind.SAME_DEVICE, Outcome.PASS))

    assert totals.devices[Outcome.PASS] == 1
    assert totals.outcome is Outcome.PASS


def test_a_row_that_was_not_read_leaves_the_whole_open() -> None:
    """All devices pass, but nobody knows what stood in that row."""
    totals = Totals()
    totals.add(row(RowKind.DEVICE, Outcome.PASS))
    totals.add(row(RowKind.NOT_READ, Outcome.CANNOT_SAY))

    assert totals.outcome is Outcome.CANNOT_SAY


def test_no_device_at_all_is_no_pass() -> None:
    """An empty schedule shows nothing."""
    assert Totals().outcome is Outcome.CANNOT_SAY
    assert Totals().failure_rate is None


def test_the_failure_rate_leaves_out_what_was_not_judged() -> None:
    """One of three judged devices fails, whatever is not tested beside them."""
    totals = Totals()
    for outcome in (Outcome.FAIL, Outcome.PASS, Outcome.BORDERLINE):
        totals.add(row(RowKind.DEVICE, outcome))
    totals.add(row(RowKind.NOT_TESTED, Outcome.CANNOT_SAY))

    assert totals.failure_rate is not None
    assert totals.failure_rate[0] == pytest.approx(1 / 3)
    assert totals.not_tested == 1
