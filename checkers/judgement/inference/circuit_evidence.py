"""What was measured in the circuit that speaks for a cause, before any reading."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.case import Case
from checkers.judgement.dc.fitness import tolerated_dc_row
from checkers.physics.condition.knowledge import Known

DC = frozenset({"blinded-by-dc", "type-too-low"})
LEAKAGE = frozenset({"leakage-adds", "leakage-opposes"})


def circumstances(cause: str, known: Known, case: Case) -> tuple[str, ...]:
    """Return what measured DC or leakage says for a cause."""
    if cause in DC and known.dc:
        return (_dc_words(case, known.dc),)
    if cause in LEAKAGE and known.leakage:
        leakage = format_quantity(known.leakage, "mA")
        share = format_quantity(100.0 * known.leakage / known.rated, "%", 2)
        return (f"{leakage} of standing leakage was measured, {share} of the rating",)
    return ()


def _dc_words(case: Case, dc: float) -> str:
    """Return the DC beside what is declared: the model's own figures are no limit."""
    flows = f"{format_quantity(dc, 'mA')} of smooth DC was measured"
    kind, row = case.device.type, tolerated_dc_row(case)
    if row is None:
        return f"{flows}; what it does depends on the type, which is not given"
    if row.undeclared:
        return f"{flows}; none is declared for type {kind}"
    tolerated = row.at_most(case.device.rated_residual_current)
    if tolerated is None:
        return flows
    return f"{flows}; type {kind} is declared to withstand {format_quantity(tolerated, 'mA')}"
