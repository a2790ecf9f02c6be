"""What was measured in the circuit that speaks for a cause, before any reading."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.case import Case
from checkers.judgement.dc.fitness import tolerated_dc_row
from checkers.physics.condition.knowledge import Known
from checkers.wording.book import part

DC = frozenset({"blinded-by-dc", "type-too-low"})
LEAKAGE = frozenset({"leakage-adds", "leakage-opposes"})


def circumstances(cause: str, known: Known, case: Case) -> tuple[str, ...]:
    """Return what measured DC or leakage says for a cause."""
    if cause in DC and known.dc:
        return (_dc_words(case, known.dc),)
    if cause in LEAKAGE and known.leakage:
        leakage = format_quantity(known.leakage, "mA")
        share = format_quantity(100.0 * known.leakage / known.rated, "%", 2)
        return (part("inference.leakage-measured", leakage=leakage, share=share),)
    return ()


def _dc_words(case: Case, dc: float) -> str:
    """Return the DC beside what is declared: the model's own figures are no limit."""
    row = tolerated_dc_row(case)
    tolerated = row.at_most(case.device.rated_residual_current) if row else None
    flows = {"dc": format_quantity(dc, "mA"), "type": case.device.type}
    if row is None:
        return part("inference.dc-measured-type-missing", **flows)
    if row.undeclared:
        return part("inference.dc-measured-none-declared", **flows)
    if tolerated is None:
        return part("inference.dc-measured", **flows)
    shown = format_quantity(tolerated, "mA")
    return part("inference.dc-measured-declared", tolerated=shown, **flows)
