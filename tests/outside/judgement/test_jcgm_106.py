"""The guard band agrees with the worked examples of JCGM 106:2012 and with SciPy."""

from __future__ import annotations

import pytest
from scipy.stats import norm

from checkers.domain.limits.limit import Limit
from checkers.judgement.limits.comparison import conformance_probability


@pytest.mark.parametrize(
    ("value", "spread", "limit", "published", "digits"),
    [
        # JCGM 106:2012, 7.3.3, breakdown voltage of a Zener diode, upper limit.
        (-5.47, 0.05, Limit("", at_most=-5.40), 0.92, 2),
        # JCGM 106:2012, 7.3.3, burst pressure of a container, lower limit.
        (509.7, 8.6, Limit("", at_least=490), 0.99, 2),
        # JCGM 106:2012, 7.4, viscosity of motor oil, both limits.
        (13.6, 1.8, Limit("", 12.5, 16.3), 0.66, 2),
        # JCGM 106:2012, 8.3.2.3: at the limit of a guard band of two standard
        # uncertainties, at most 2.3 % of accepted items do not conform.
        (96, 2, Limit("", at_most=100), 0.977, 3),
    ],
)
def test_conformance_probability_agrees_with_the_guide(
    value: float, spread: float, limit: Limit, published: float, digits: int
) -> None:
    """The stated probabilities come out, to the digits the guide prints."""
    assert published == round(conformance_probability(value, limit, spread), digits)


# JCGM 106:2012, table 1.
@pytest.mark.parametrize(
    ("confidence", "z"), [(0.80, 0.84), (0.90, 1.28), (0.95, 1.64), (0.99, 2.33), (0.999, 3.09)]
)
def test_the_one_sided_factors_are_those_of_table_1(confidence: float, z: float) -> None:
    """A reading z standard uncertainties inside the limit has the probability printed."""
    found = conformance_probability(100 - z, Limit("", at_most=100), 1)

    assert confidence == pytest.approx(found, abs=0.0011)


@pytest.mark.parametrize("value", [240, 285, 299.9, 300, 301, 330])
def test_conformance_probability_agrees_with_scipy(value: float) -> None:
    """SciPy's normal distribution gives the same probability."""
    expected = norm.cdf(300, loc=value, scale=10) - norm.cdf(130, loc=value, scale=10)

    assert expected == pytest.approx(conformance_probability(value, Limit("", 130, 300), 10))
