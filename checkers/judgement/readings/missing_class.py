"""Kinds of device, such as a class, that its form and type do not tell, and that limits go by."""

from __future__ import annotations

from checkers.domain.device.readings import Reading
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import band_of, band_rows
from checkers.judgement.limits.demands import must_at
from checkers.judgement.limits.time_limits import BindingTimes
from checkers.judgement.readings.verdict import Judged, undecided

DC_RATING = 6.0
"""Rated current [mA] of the detection of smooth DC, which is none for other waveforms."""


def kind_missing(
    reading: Reading, case: Case, time: BindingTimes | None = None, current: float = 0.0
) -> list[Judged] | None:
    """Return a finding where the band is that of a kind of device which nobody said it is.

    With the times and the test current [mA], kinds that ask the same there need not be told.
    """
    found = [row for row in band_rows(case, reading.waveform) if row.when.only("option")]
    alike = time is not None and len(found) > 1
    asked = {must_at(band_of(row, case), time, current) for row in found if time is not None}
    if not found or _told_by_rating(case) or (alike and len(asked) == 1):
        return None
    return undecided("kind-missing", reading)


def _told_by_rating(case: Case) -> bool:
    """Tell whether a detection of DC is of the protective kind, which alone has another rating."""
    rated = case.device.rated_residual_current
    return case.device.detects_dc and rated is not None and rated > DC_RATING
