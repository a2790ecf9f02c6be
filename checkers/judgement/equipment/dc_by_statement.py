"""What a statement that a device type suffices promises of smooth DC: what that type bears."""

from __future__ import annotations

from datetime import date
from functools import cache

from checkers.domain.limits.tables import rows_in
from checkers.domain.sources.documents import Citation

BORNE = "iec-60364-5-53/smooth-dc-tolerated"


@cache
def promised_by(kind: str) -> tuple[float, Citation]:
    """Return the most smooth DC [mA] that equipment leaves of which a type is said to suffice.

    Inputs: a device type. Result: what that type bears, none for a type AC; and where it stands.
    Assumption: whoever says that a type suffices means that what flows does not blind it.

    Source: [1] IEC 60364-5-53:2019, 531.3.3.
    """
    (row,) = rows_in(BORNE, on=date.max, type=kind, rated=0.0)
    return (0.0 if row.undeclared else row.at_most() or 0.0), row.citation
