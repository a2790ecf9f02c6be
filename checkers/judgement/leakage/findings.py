"""Standing leakage against the rule for the sum, and against the current a device must bear."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from checkers.domain.device.device import DeviceType
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import citations
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Numbers, Outcome
from checkers.judgement.leakage.found import Found
from checkers.judgement.leakage.parts import NOISE
from checkers.judgement.leakage.standing_leakage import Budget, StandingLeakage
from checkers.judgement.leakage.words import list_words, shown
from checkers.judgement.limits.comparison import compare
from checkers.judgement.limits.numbers import figure_numbers, reading_numbers
from checkers.judgement.limits.safe_rounding import rounded_up
from checkers.wording.book import part
from checkers.wording.finding import NO_FACTS, finding, reworded

SENSE_MORE = frozenset({DeviceType.F, DeviceType.B, DeviceType.B_PLUS})


@dataclass(frozen=True, slots=True)
class LeakageLimit:
    """A current that the leakage must not exceed [mA], which of the two it is, and its source."""

    is_budget: bool
    current: float
    sources: tuple[Citation, ...]
    facts: Mapping[str, object] = NO_FACTS

    @property
    def limit(self) -> Limit:
        """The current as a limit [mA]."""
        return Limit("mA", at_most=self.current)

    @property
    def judges(self) -> Judges:
        """Whose limit it is: the code's for the budget, else what the device must bear."""
        return Judges.INSTALLATION_CODE if self.is_budget else Judges.FUNCTION


def judge_leakage(leakage: StandingLeakage, budget: Budget) -> list[Finding]:
    """Return the findings on the standing leakage of a device."""
    missing = _missing(leakage, budget)
    if missing:
        return [missing]
    findings = [one for bound in _bounds(budget) for one in _against(leakage, bound)]
    return [*findings, *_no_rule(leakage, budget)]


def _against(leakage: StandingLeakage, bound: LeakageLimit) -> list[Finding]:
    """Return what a measurement says, and what the list says where it adds to that.

    A clamp is not outvoted by figures of the catalogue. Figures that were typed in stand beside
    it where the leakage of some may cancel that of others while the clamp is on.
    """
    measured, worked_out = _measured(leakage, bound), _worked_out(leakage, bound)
    if measured is None or worked_out is None:
        return [one for one in (measured, worked_out) if one is not None]
    if worked_out.outcome is Outcome.PASS:
        return [measured, worked_out]
    fails = worked_out.outcome is Outcome.FAIL
    if measured.outcome is not Outcome.PASS:
        return [measured, worked_out] if fails else [measured]
    if leakage.may_cancel and leakage.given_at_most > bound.current + NOISE:
        return [measured, worked_out]
    return [measured, _disagrees(worked_out, leakage, bound)] if fails else [measured]


def _disagrees(found: Finding, leakage: StandingLeakage, bound: LeakageLimit) -> Finding:
    by_list = bool(leakage.items)
    lower = Found.LIST_OVER_MEASURED_LOWER if by_list else Found.INSULATION_OVER_MEASURED_LOWER
    facts = _facts(bound, _worked_out_facts(leakage, bound))
    return reworded(found, lower.code(budget=bound.is_budget), facts, outcome=Outcome.CANNOT_SAY)


def _bounds(budget: Budget) -> list[LeakageLimit]:
    bounds = []
    if budget.limit is not None:
        margin = format_quantity(budget.margin or 0.0, "mA")
        sources = citations(budget.limit_row, budget.margin_row)
        facts = {"margin": margin}
        bounds.append(
            LeakageLimit(is_budget=True, current=budget.limit, sources=sources, facts=facts)
        )
    if budget.no_trip is not None:
        sources = budget.band.sources if budget.band else ()
        bounds.append(LeakageLimit(is_budget=False, current=budget.no_trip, sources=sources))
    return bounds


def _missing(leakage: StandingLeakage, budget: Budget) -> Finding | None:
    if leakage.case.device.rated_residual_current is None and budget.no_trip is None:
        return _undecided("leakage.rating-missing", "device.rated_residual_current")
    if leakage.measured is None and not leakage.worked_out:
        return _undecided("leakage.nothing-measured-or-listed", "measured")
    return None if _bounds(budget) else _undecided("leakage.no-limit-known", "device.form")


def _no_rule(leakage: StandingLeakage, budget: Budget) -> list[Finding]:
    if budget.limit is not None:
        return []
    facts = {"code": leakage.case.code.name}
    return [_undecided("leakage.no-rule-for-sum", "code", facts)]


def _measured(leakage: StandingLeakage, bound: LeakageLimit) -> Finding | None:
    if leakage.measured is None:
        return None
    reading = Measured(Said.FIGURE, leakage.measured, "mA")
    spread = leakage.uncertainty(bound.current)
    compared = compare(reading, bound.limit, spread, JUDGING.confidence)
    outcome, found = compared.outcome, MEASURED[compared.outcome]
    if leakage.clamp_filter == "on" and outcome is Outcome.PASS:
        outcome, found = _with_filter(leakage)
    taken = outcome is Outcome.BORDERLINE and leakage.stated_uncertainty is None
    return _finding(
        bound,
        found,
        outcome,
        {"measured": reading, "type": leakage.case.device.type},
        measured=str(reading),
        measured_as=MeasuredAs.MEASURED,
        field="measured",
        sources=(CONSTANTS["leakage_clamp_uncertainty"].citation,) if taken else (),
        numbers=reading_numbers(reading, bound.limit, spread),
    )


def _with_filter(leakage: StandingLeakage) -> tuple[Outcome, Found]:
    """Return the outcome where the clamp's filter left only the mains frequency to pass."""
    kind = leakage.case.device.type
    if kind == DeviceType.UNKNOWN:
        return Outcome.CANNOT_SAY, Found.FILTER_HIDES_WHAT_TYPE_MAY_SENSE
    if kind in SENSE_MORE:
        return Outcome.CANNOT_SAY, Found.FILTER_HIDES_WHAT_TYPE_SENSES
    return Outcome.PASS, Found.MEASURED_WITH_FILTER_WITHIN


def _worked_out(leakage: StandingLeakage, bound: LeakageLimit) -> Finding | None:
    if not leakage.worked_out:
        return None
    if not leakage.items:
        return _from_insulation(leakage, bound)
    return _from_items(leakage, bound)


def _worked_out_facts(leakage: StandingLeakage, bound: LeakageLimit) -> Mapping[str, object]:
    if leakage.items:
        return {"list": list_words(leakage)}
    resistive = leakage.through_insulation.resistive
    room = max(bound.current**2 - resistive**2, 0.0) ** 0.5
    least = f"{CONSTANTS['insulation_at_least'].value / 1e6:g}"
    low = bound.is_budget and _is_low(leakage)
    return {
        "through": shown(resistive),
        "room": _shown_down(room),
        "low": part("leakage.insulation-low", least=least) if low else "",
    }


def _from_items(leakage: StandingLeakage, bound: LeakageLimit) -> Finding:
    expected, at_most = leakage.expected, leakage.at_most
    outcome, found = _found_by_list(leakage, bound.current + NOISE)
    return _finding(
        bound,
        found,
        outcome,
        _worked_out_facts(leakage, bound),
        measured=shown(expected),
        measured_as=MeasuredAs.CALCULATED,
        field="items",
        sources=tuple(one.source for one in leakage.items if one.source is not None),
        numbers=_from_on(bound, expected, at_most if leakage.has_upper_figures else None),
    )


def _found_by_list(leakage: StandingLeakage, over: float) -> tuple[Outcome, Found]:
    """Return what a list comes to: or what leaves it open, its lines, natures or equipment."""
    if leakage.must_be > over:
        return Outcome.FAIL, Found.LIST_OVER
    if leakage.at_most <= over and leakage.has_upper_figures:
        return Outcome.PASS, Found.LIST_WITHIN
    if leakage.given_at_most <= over:
        return Outcome.CANNOT_SAY, Found.LIST_MAY_EXCEED_BY_EQUIPMENT
    if leakage.lines_are_open:
        return Outcome.CANNOT_SAY, Found.LIST_MAY_EXCEED_BY_LINES
    return Outcome.CANNOT_SAY, Found.LIST_MAY_EXCEED_BY_NATURE


def _from_insulation(leakage: StandingLeakage, bound: LeakageLimit) -> Finding:
    resistive = leakage.through_insulation.resistive
    over, low = resistive > bound.current + NOISE, bound.is_budget and _is_low(leakage)
    return _finding(
        bound,
        Found.INSULATION_OVER if over else Found.INSULATION_MAY_EXCEED,
        Outcome.FAIL if over else Outcome.CANNOT_SAY,
        _worked_out_facts(leakage, bound),
        measured=shown(resistive),
        measured_as=MeasuredAs.CALCULATED,
        field="insulation_resistance",
        sources=(CONSTANTS["insulation_at_least"].citation,) if low else (),
        numbers=_from_on(bound, resistive, None),
    )


def _from_on(bound: LeakageLimit, value: float, most: float | None) -> Numbers:
    """Return a leakage [mA] that may be more, up to `most` or with no end known."""
    shown = rounded_up(value, 3)
    placed = figure_numbers(shown, bound.limit, most=max(shown, most or 0.0))
    return placed if most is not None else replace(placed, most=None)


def _is_low(leakage: StandingLeakage) -> bool:
    resistance = leakage.insulation_resistance
    return resistance is not None and resistance < CONSTANTS["insulation_at_least"].value


def _shown_down(current: float) -> str:
    return format_quantity(int(current * 10) / 10, "mA")


def _facts(bound: LeakageLimit, facts: Mapping[str, object]) -> Mapping[str, object]:
    return {"limit": format_quantity(bound.current, "mA"), **bound.facts, **facts}


def _finding(
    bound: LeakageLimit,
    found: Found,
    outcome: Outcome,
    facts: Mapping[str, object],
    *,
    sources: tuple[Citation, ...] = (),
    **rest: Any,
) -> Finding:
    return finding(
        found.code(budget=bound.is_budget),
        outcome,
        bound.judges,
        _facts(bound, facts),
        limit=str(bound.limit),
        sources=tuple(dict.fromkeys((*bound.sources, *sources))),
        **rest,
    )


def _undecided(code: str, field: str, facts: Mapping[str, object] = NO_FACTS) -> Finding:
    return finding(code, Outcome.CANNOT_SAY, Judges.INSTALLATION_CODE, facts, field=field)


MEASURED = {
    Outcome.PASS: Found.MEASURED_WITHIN,
    Outcome.FAIL: Found.MEASURED_OVER,
    Outcome.BORDERLINE: Found.MEASURED_CLOSE,
}
