"""6 mA detection against what its own figures imply, and against other published texts.

[1] GB/T 40820-2021, the Chinese adoption of IEC 62955, as excerpted: 6 mA rated, two kinds.
[2] A reference design of a chip maker for charge points: thresholds of 6 mA DC.
[3] A half wave has a mean of 0.637, 0.450 and 0.309 of its r.m.s. value when each half wave starts
    at 0, 90 and 135 degrees (worked out here by integration).
[4] A trade article on series of charge points: two of them may let 12 mA pass.
"""

from __future__ import annotations

from datetime import date
from math import pi, sin, sqrt

import pytest
from scipy.integrate import quad

from checkers.domain.limits.tables import TABLES, rows

DAY = date(2026, 11, 24)


def smooth_dc_band() -> tuple[float | None, float | None]:
    """Return the lower and upper operating current [mA] on smooth DC."""
    (row,) = rows("operating-current", on=DAY, form="rdc-dd", waveform="smooth-dc")
    return row.at_least(), row.at_most()


def mean_over_rms(start: float) -> float:
    """Return mean / r.m.s. of a half wave that starts at an angle [degrees], by integration."""
    angle = start * pi / 180
    mean = quad(sin, angle, pi)[0] / (2 * pi)
    mean_square = quad(lambda x: sin(x) ** 2, angle, pi)[0] / (2 * pi)
    return float(mean / sqrt(mean_square))


def test_the_rated_current_is_6_milliamperes() -> None:
    """Sources [1] and [2]."""
    assert smooth_dc_band()[1] == 6.0


@pytest.mark.parametrize(("waveform", "start"), [("half-wave", 0.0), ("half-wave-90", 90.0)])
def test_the_absolute_lower_limits_keep_the_mean_below_the_dc_that_must_not_operate(
    waveform: str, start: float
) -> None:
    """Source [3]: 4.5 mA and 6.3 mA both have a mean of about 2.85 mA, just under 3 mA."""
    (row,) = rows(
        "operating-current",
        on=DAY,
        form="rdc-dd",
        option="protective",
        waveform=waveform,
        rated=30.0,
    )
    mean = (row.at_least(30.0) or 0.0) * mean_over_rms(start)
    lower = smooth_dc_band()[0]

    assert lower is not None
    assert 2.8 < mean < lower


def test_two_charge_points_may_let_twice_as_much_dc_pass() -> None:
    """Source [4]: 12 mA, above what a type A or F upstream bears."""
    upper = smooth_dc_band()[1]
    bears = {
        type_: row.at_most()
        for row in TABLES["iec-60364-5-53/smooth-dc-tolerated"].rows
        for type_ in row.when.only("type") or ()
    }

    assert upper is not None
    assert 2 * upper == 12.0
    assert all(2 * upper > (bears[type_] or 0.0) for type_ in ("A", "F"))


def test_at_more_dc_it_is_never_slower() -> None:
    """10 s at 6 mA, 0.3 s at 60 mA, 0.1 s at 200 mA: the order of the table."""
    found = rows("trip-time", on=DAY, form="rdc-dd", waveform="smooth-dc")
    times = [row.at_most() or 0.0 for row in found]

    assert times == sorted(times, reverse=True)
