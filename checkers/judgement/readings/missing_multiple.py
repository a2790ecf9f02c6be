"""A reading of which nobody said at which current it was taken."""

from __future__ import annotations

from checkers.domain.device.readings import Reading, Test
from checkers.domain.quantities.measured_value import Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.case import Case
from checkers.judgement.limits.time_limits import product_times
from checkers.judgement.readings.verdict import Judged, undecided
from checkers.wording.book import part

STEPS = (1.0, 5.0)


def multiple_missing(reading: Reading, case: Case) -> list[Judged]:
    """Return the finding that neither multiple nor current is given, with what each would mean."""
    return undecided("multiple-missing", reading, {"each": _what_each_means(reading, case)})


def _what_each_means(reading: Reading, case: Case) -> str:
    rated, measured = case.device.rated_residual_current, reading.measured
    timed = reading.test == Test.TRIP_TIME and measured.said is Said.FIGURE
    if rated is None or not timed or reading.waveform != "ac":
        return ""
    words = [
        part(
            "reading.each-means",
            multiple=f"{step:g}",
            measured=measured,
            side=_side(measured.value, limit),
            limit=format_quantity(limit, "ms"),
        )
        for step in STEPS
        if (limit := product_times(case, reading.waveform, step * rated).promised.at_most)
    ]
    return ";".join(words) + "." if words else ""


def _side(value: float, limit: float) -> str:
    return part("reading.within" if value <= limit else "reading.over")
