"""The numbers behind a finding's words, for whoever draws them."""

from __future__ import annotations

from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.verdicts import Numbers
from checkers.judgement.limits.comparison import Limits


def reading_numbers(
    measured: Measured, limits: Limits, unit: str, uncertainty: float
) -> Numbers | None:
    """Return a reading with its limits as numbers, or None where there is no reading to place.

    Inputs: the reading; the limits and the expanded uncertainty, in the unit named.
    Result: for a figure, the span of its uncertainty; a bound is open on its far side; a device
    that never tripped has no value and lies beyond every limit.
    """
    if measured.said is Said.NO_TRIP:
        return Numbers(unit, None, None, None, limits.at_least, limits.at_most)
    if not measured.is_number or measured.unit != unit:
        return None
    value = measured.value
    least, most = max(0.0, value - uncertainty), value + uncertainty
    return Numbers(
        unit,
        value,
        {Said.MORE_THAN: value, Said.LESS_THAN: None}.get(measured.said, least),
        {Said.MORE_THAN: None, Said.LESS_THAN: value}.get(measured.said, most),
        limits.at_least,
        limits.at_most,
    )


def figure_numbers(
    value: float, unit: str, limits: Limits, least: float | None = None, most: float | None = None
) -> Numbers:
    """Return a figure with its limits as numbers, in the unit named.

    `least` and `most` bound what the true value may be; where one is left out, it is the figure.
    """
    return Numbers(
        unit,
        value,
        value if least is None else least,
        value if most is None else most,
        limits.at_least,
        limits.at_most,
    )
