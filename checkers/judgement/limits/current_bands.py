"""Between which currents a device may operate, and from where on it must."""

from __future__ import annotations

from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.judgement.case import Case


def operating_band(case: Case, waveform: str) -> Limit | None:
    """Return the band of the product standard for a waveform, or None where it sets none.

    Below its least current [mA] the device must hold; at its greatest it must have operated.
    """
    found = band_rows(case, waveform)
    return band_of(found[0], case) if found else None


def band_rows(case: Case, waveform: str) -> tuple[Row, ...]:
    """Return the rows of operating currents of the device's product standard on a waveform."""
    return rows(
        "operating-current",
        on=case.day,
        made_to=case.made_to,
        waveform=waveform,
        **case.device_asked,
    )


def band_of(row: Row, case: Case) -> Limit:
    """Return a row's band for the device of a case."""
    rated = case.device.rated_residual_current
    return Limit("mA", row.at_least(rated), row.at_most(rated), (row,))
