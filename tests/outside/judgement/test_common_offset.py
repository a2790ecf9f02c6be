"""The closed form for a free common offset of times, against SciPy's quadrature."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, inf, prod

import pytest
from scipy.integrate import quad
from scipy.stats import norm

from checkers.domain.quantities.measured_value import parse_measured
from checkers.judgement.inference.weighing.samples import Columns
from checkers.judgement.inference.weighing.smoothing import OFFSET_SPREAD, gains, pulls_of, summed
from checkers.physics.response.attempt import Attempt

TIME = Attempt("trip-time", 30.0, 30.0)
RAMP = Attempt("ramp", 30.0, 33.0)


def times(means: Sequence[float], spreads: Sequence[float]) -> list[Columns]:
    """Return the predictions of one member for several times."""
    return [
        Columns([1.0], [mean], [spread], [1.0], [0.0])
        for mean, spread in zip(means, spreads, strict=True)
    ]


@pytest.mark.parametrize("values", [(28.0, 33.0, 20.0), (30.0, 36.0, 23.0), (27.0, 40.0, 18.0)])
def test_the_gain_is_the_integral_over_every_offset(values: tuple[float, ...]) -> None:
    """Each offset, weighed by a normal distribution, over no offset at all."""
    means, spreads = (29.0, 35.0, 21.0), (2.5, 3.0, 2.0)
    columns = times(means, spreads)
    pulls = [
        pulls_of(column, TIME, parse_measured(f"{value} ms", "trip_time"), 1.0)
        for column, value in zip(columns, values, strict=True)
    ]

    def joint(offset: float) -> float:
        return prod(
            float(norm.pdf(value, mean + offset, spread))
            for value, mean, spread in zip(values, means, spreads, strict=True)
        )

    whole, _ = quad(lambda x: joint(x) * norm.pdf(x, 0.0, OFFSET_SPREAD), -inf, inf)

    assert exp(gains(summed(pulls, 1))[0]) == pytest.approx(whole / joint(0.0), rel=1e-6)


@pytest.mark.parametrize(
    ("attempt", "value"), [(RAMP, "22 mA"), (TIME, "> 300 ms"), (TIME, "tripped")]
)
def test_only_figures_of_times_share_an_offset(attempt: Attempt, value: str) -> None:
    """A current, a bound and a word have none."""
    column = times([29.0], [2.5])[0]

    assert pulls_of(column, attempt, parse_measured(value, "trip_time"), 1.0) is None


def test_a_freak_does_not_pull() -> None:
    """A time that the member does not explain leaves the offset alone."""
    column = times([29.0], [2.5])[0]
    far = pulls_of(column, TIME, parse_measured("280 ms", "trip_time"), 1.0)

    assert far is not None
    assert gains(far) == [0.0]
