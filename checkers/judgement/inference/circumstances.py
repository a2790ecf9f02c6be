"""What was measured in the circuit that speaks for a cause, before any reading."""

from __future__ import annotations

from math import inf

from checkers.domain.devices import DeviceType
from checkers.domain.quantities import format_quantity
from checkers.physics.response.dc_shift import blinding_dc
from checkers.physics.response.figures import FIGURES
from checkers.physics.response.known import Known

DC = frozenset({"blinded-by-dc", "type-too-low"})
LEAKAGE = frozenset({"leakage-adds", "leakage-opposes"})


def circumstances(cause: str, known: Known) -> tuple[str, ...]:
    """Return what measured DC or leakage says for a cause."""
    if cause in DC and known.dc:
        return (_dc_words(known, known.dc),)
    if cause in LEAKAGE and known.leakage:
        leakage = format_quantity(known.leakage, "mA")
        share = format_quantity(100.0 * known.leakage / known.rated, "%", 2)
        return (f"{leakage} of standing leakage was measured, {share} of the rating",)
    return ()


def _dc_words(known: Known, dc: float) -> str:
    flows = f"{format_quantity(dc, 'mA')} of smooth DC was measured"
    if known.type == DeviceType.UNKNOWN:
        return f"{flows}; what it does depends on the type, which is not given"
    least = blinding_dc(known.type, known.rated)
    if least == inf:
        return flows
    own = known.rated * FIGURES.own_trip_share.typical
    from_here = format_quantity(least * own, "mA", 2)
    return f"{flows}; from about {from_here} a device of this type and rating is blinded"
