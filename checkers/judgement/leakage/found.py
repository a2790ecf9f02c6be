"""What is found of a standing leakage, each with its codes for the two limits."""

from __future__ import annotations

from enum import Enum


class Found(Enum):
    """What was found, as (code against the budget, code against the no-trip limit)."""

    MEASURED_WITHIN = (
        "leakage.measured-within-budget",
        "leakage.measured-within-no-trip-limit",
    )
    MEASURED_OVER = (
        "leakage.measured-over-budget",
        "leakage.measured-over-no-trip-limit",
    )
    MEASURED_CLOSE = (
        "leakage.measured-close-to-budget",
        "leakage.measured-close-to-no-trip-limit",
    )
    MEASURED_WITH_FILTER_WITHIN = (
        "leakage.measured-with-filter-within-budget",
        "leakage.measured-with-filter-within-no-trip-limit",
    )
    FILTER_HIDES_WHAT_TYPE_SENSES = (
        "leakage.filter-hides-what-type-senses-budget",
        "leakage.filter-hides-what-type-senses-no-trip-limit",
    )
    FILTER_HIDES_WHAT_TYPE_MAY_SENSE = (
        "leakage.filter-hides-what-type-may-sense-budget",
        "leakage.filter-hides-what-type-may-sense-no-trip-limit",
    )
    LIST_WITHIN = (
        "leakage.list-within-budget",
        "leakage.list-within-no-trip-limit",
    )
    LIST_OVER = (
        "leakage.list-over-budget",
        "leakage.list-over-no-trip-limit",
    )
    LIST_OVER_MEASURED_LOWER = (
        "leakage.list-over-budget-measured-lower",
        "leakage.list-over-no-trip-limit-measured-lower",
    )
    LIST_MAY_EXCEED_BY_EQUIPMENT = (
        "leakage.list-may-exceed-budget-by-equipment",
        "leakage.list-may-exceed-no-trip-limit-by-equipment",
    )
    LIST_MAY_EXCEED_BY_LINES = (
        "leakage.list-may-exceed-budget-by-lines",
        "leakage.list-may-exceed-no-trip-limit-by-lines",
    )
    LIST_MAY_EXCEED_BY_NATURE = (
        "leakage.list-may-exceed-budget-by-nature",
        "leakage.list-may-exceed-no-trip-limit-by-nature",
    )
    INSULATION_OVER = (
        "leakage.insulation-over-budget",
        "leakage.insulation-over-no-trip-limit",
    )
    INSULATION_OVER_MEASURED_LOWER = (
        "leakage.insulation-over-budget-measured-lower",
        "leakage.insulation-over-no-trip-limit-measured-lower",
    )
    INSULATION_MAY_EXCEED = (
        "leakage.insulation-may-exceed-budget",
        "leakage.insulation-may-exceed-no-trip-limit",
    )

    def code(self, *, budget: bool) -> str:
        """Return the code of what was found, against the budget or the no-trip limit."""
        return self.value[0 if budget else 1]
