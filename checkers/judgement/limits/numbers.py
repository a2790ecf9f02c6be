"""The numbers behind a finding's words, for whoever draws them."""

from __future__ import annotations

from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.verdicts import Numbers


def reading_numbers(measured: Measured, limit: Limit, uncertainty: float) -> Numbers | None:
    """Return a reading with its limit as numbers, or None where there is no reading to place.

    Inputs: the reading; the limit; the expanded uncertainty [the limit's unit].
    Result: for a figure, the span of its uncertainty; a bound is open on its far side; a device
    that never tripped has no value and lies beyond every limit.
    """
    unit = limit.unit
    if measured.said is Said.NO_TRIP:
        return Numbers(unit, None, None, None, limit.at_least, limit.at_most)
    if not measured.is_number or measured.unit != unit:
        return None
    value = measured.value
    least, most = max(0.0, value - uncertainty), value + uncertainty
    return Numbers(
        unit,
        value,
        {Said.MORE_THAN: value, Said.LESS_THAN: None}.get(measured.said, least),
        {Said.MORE_THAN: None, Said.LESS_THAN: value}.get(measured.said, most),
        limit.at_least,
        limit.at_most,
    )


def figure_numbers(
    value: float, limit: Limit, least: float | None = None, most: float | None = None
) -> Numbers:
    """Return a figure with its limit as numbers, in the limit's unit.

    `least` and `most` bound what the true value may be; where one is left out, it is the figure.
    """
    return Numbers(
        limit.unit,
        value,
        value if least is None else least,
        value if most is None else most,
        limit.at_least,
        limit.at_most,
    )
