"""Standing leakage against the rule for the sum, and against the current a device must bear."""

from __future__ import annotations

from dataclasses import dataclass, replace

from checkers.domain.device.device import DeviceType
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import citations
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Numbers, Outcome
from checkers.judgement.leakage.parts import NOISE
from checkers.judgement.leakage.standing_leakage import Budget, StandingLeakage
from checkers.judgement.leakage.words import list_words, shown
from checkers.judgement.limits.comparison import compare
from checkers.judgement.limits.numbers import figure_numbers, reading_numbers
from checkers.judgement.limits.safe_rounding import rounded_up

RULE = "standing leakage"
HOLDS = "no trip by leakage alone"
SENSE_MORE = frozenset({DeviceType.F, DeviceType.B, DeviceType.B_PLUS})
MEASURE = "Measure with a leakage clamp around all live conductors, loads on and working."
LINES_OPEN = (
    "What decides is how the items lie on the lines: say the line of each, or that the device is "
    "single-phase."
)
SPLIT = "Split the circuits over more devices, or find what leaks."


@dataclass(frozen=True, slots=True)
class LeakageLimit:
    """A current that the leakage must not exceed [mA], what it is, and where it stands."""

    about: str
    judges: Judges
    current: float
    meaning: str
    sources: tuple[Citation, ...]
    aside: str = ""

    @property
    def limit(self) -> Limit:
        """The current as a limit [mA]."""
        return Limit("mA", at_most=self.current)


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
    return [measured, _disagrees(worked_out)] if fails else [measured]


def _disagrees(finding: Finding) -> Finding:
    says = f"{finding.says} The measurement is lower: something may have been off or at rest."
    return replace(finding, outcome=Outcome.CANNOT_SAY, says=says, do_next=MEASURE)


def _bounds(budget: Budget) -> list[LeakageLimit]:
    bounds = []
    if budget.limit is not None:
        bounds.append(_rule(budget, budget.limit))
    if budget.no_trip is not None:
        sources = budget.band.sources if budget.band else ()
        meaning = "what the device must bear without tripping"
        bounds.append(LeakageLimit(HOLDS, Judges.FUNCTION, budget.no_trip, meaning, sources))
    return bounds


def _rule(budget: Budget, limit: float) -> LeakageLimit:
    sources = citations(budget.limit_row, budget.margin_row)
    aside = ""
    if budget.margin is not None:
        aside = f" (an older margin of the trade is {format_quantity(budget.margin, 'mA')})"
    meaning = "the rule for the sum on one device"
    return LeakageLimit(RULE, Judges.INSTALLATION_CODE, limit, meaning, sources, aside)


def _missing(leakage: StandingLeakage, budget: Budget) -> Finding | None:
    if leakage.case.device.rated_residual_current is None and budget.no_trip is None:
        says = "The rated residual current is not given, and the budget is a share of it."
        return _undecided(says, "Read IΔn on the device.", "device.rated_residual_current")
    if leakage.measured is None and not leakage.worked_out:
        says = "No leakage is measured or listed, so nothing was judged."
        return _undecided(says, MEASURE, "measured")
    if not _bounds(budget):
        says = "No limit of leakage is known for this device under this code."
        return _undecided(says, "Name the device that disconnects on AC.", "device.form")
    return None


def _no_rule(leakage: StandingLeakage, budget: Budget) -> list[Finding]:
    if budget.limit is not None:
        return []
    says = f"No rule for the sum of leakage is carried for {leakage.case.code.name}."
    return [_undecided(says, "Ask the authority that decides where you are.", "code")]


def _measured(leakage: StandingLeakage, bound: LeakageLimit) -> Finding | None:
    if leakage.measured is None:
        return None
    reading = Measured(Said.FIGURE, leakage.measured, "mA")
    spread = leakage.uncertainty(bound.current)
    compared = compare(reading, bound.limit, spread, JUDGING.confidence)
    outcome, note = compared.outcome, ""
    if outcome is Outcome.BORDERLINE:
        note = " That is too close to tell with the uncertainty of the clamp."
    elif leakage.clamp_filter == "on" and outcome is Outcome.PASS:
        outcome, note = _with_filter(leakage)
    taken = outcome is Outcome.BORDERLINE and leakage.stated_uncertainty is None
    says = f"Measured {reading}; {_bound_words(bound)}.{note}"
    sources = (CONSTANTS["leakage_clamp_uncertainty"].citation,) if taken else ()
    numbers = reading_numbers(reading, bound.limit, spread)
    return _finding(
        bound,
        outcome,
        says,
        measured=str(reading),
        measured_as=MeasuredAs.MEASURED,
        field="measured",
        sources=sources,
        numbers=numbers,
    )


def _with_filter(leakage: StandingLeakage) -> tuple[Outcome, str]:
    """Return the outcome where the clamp's filter left only the mains frequency to pass."""
    kind = leakage.case.device.type
    if kind == DeviceType.UNKNOWN:
        hidden = " The clamp's filter hides currents that the device may sense: its type tells."
        return Outcome.CANNOT_SAY, hidden
    if kind in SENSE_MORE:
        hidden = f" The clamp's filter hides currents that a type {kind} senses."
        return Outcome.CANNOT_SAY, hidden
    return Outcome.PASS, " The clamp's filter was on: currents of higher frequency are not in it."


def _worked_out(leakage: StandingLeakage, bound: LeakageLimit) -> Finding | None:
    if not leakage.worked_out:
        return None
    if not leakage.items:
        return _from_insulation(leakage, bound)
    return _from_items(leakage, bound)


def _from_items(leakage: StandingLeakage, bound: LeakageLimit) -> Finding:
    expected, at_most = leakage.expected, leakage.at_most
    over = bound.current + NOISE
    sure = at_most <= over and leakage.has_upper_figures
    outcome = Outcome.CANNOT_SAY
    if leakage.must_be > over:
        outcome = Outcome.FAIL
    elif sure:
        outcome = Outcome.PASS
    note = f" {_open(leakage, bound)}" if outcome is Outcome.CANNOT_SAY else ""
    says = f"{list_words(leakage)}; {_bound_words(bound)}.{note}"
    sources = tuple(one.source for one in leakage.items if one.source is not None)
    numbers = _from_on(bound, expected, at_most if leakage.has_upper_figures else None)
    return _finding(
        bound,
        outcome,
        says,
        measured=shown(expected),
        measured_as=MeasuredAs.CALCULATED,
        field="items",
        sources=sources,
        numbers=numbers,
    )


def _open(leakage: StandingLeakage, bound: LeakageLimit) -> str:
    """Return what leaves a list open: lines not told, natures not told, or the equipment."""
    if leakage.given_at_most <= bound.current + NOISE:
        return "Whether it keeps within it depends on the equipment."
    if leakage.lines_are_open:
        return LINES_OPEN
    return "Whether it keeps within it depends on what it flows through, which is not said of all."


def _from_insulation(leakage: StandingLeakage, bound: LeakageLimit) -> Finding:
    resistive = leakage.through_insulation.resistive
    through = shown(resistive)
    outcome = Outcome.FAIL if resistive > bound.current + NOISE else Outcome.CANNOT_SAY
    room = (max(bound.current**2 - resistive**2, 0.0)) ** 0.5
    left = (
        ""
        if outcome is Outcome.FAIL
        else f" It is within it if filters and cables leak at most {_shown_down(room)} beside it."
    )
    says = (
        f"The insulation lets {through} through; {_bound_words(bound)}. An insulation test with DC "
        f"shows the resistive part only.{left}"
    )
    low, sources = _low_insulation(leakage) if bound.about == RULE else ("", ())
    return _finding(
        bound,
        outcome,
        says + low,
        measured=through,
        measured_as=MeasuredAs.CALCULATED,
        field="insulation_resistance",
        sources=sources,
        numbers=_from_on(bound, resistive, None),
    )


def _from_on(bound: LeakageLimit, value: float, most: float | None) -> Numbers:
    """Return a leakage [mA] that may be more, up to `most` or with no end known."""
    shown = rounded_up(value, 3)
    placed = figure_numbers(shown, bound.limit, most=max(shown, most or 0.0))
    return placed if most is not None else replace(placed, most=None)


def _low_insulation(leakage: StandingLeakage) -> tuple[str, tuple[Citation, ...]]:
    least = CONSTANTS["insulation_at_least"]
    if leakage.insulation_resistance is None or leakage.insulation_resistance >= least.value:
        return "", ()
    says = (
        " Such insulation wants finding whatever the budget: at verification a circuit has at "
        f"least {least.value / 1e6:g} Mohm."
    )
    return says, (least.citation,)


def _bound_words(bound: LeakageLimit) -> str:
    return f"{bound.meaning} is {format_quantity(bound.current, 'mA')}{bound.aside}"


def _shown_down(current: float) -> str:
    return format_quantity(int(current * 10) / 10, "mA")


def _finding(  # noqa: PLR0913  # the parts of a finding that differ here
    bound: LeakageLimit,
    outcome: Outcome,
    says: str,
    *,
    measured: str,
    measured_as: MeasuredAs,
    field: str,
    numbers: Numbers | None,
    sources: tuple[Citation, ...] = (),
) -> Finding:
    return Finding(
        about=bound.about,
        outcome=outcome,
        says=says,
        judges=bound.judges,
        measured=measured,
        measured_as=measured_as,
        limit=str(bound.limit),
        do_next=_next_step(outcome, bound),
        field=field,
        sources=tuple(dict.fromkeys((*bound.sources, *sources))),
        numbers=numbers,
    )


def _next_step(outcome: Outcome, bound: LeakageLimit) -> str:
    if outcome is Outcome.FAIL and bound.about == HOLDS:
        return f"It may trip with nothing wrong. {SPLIT}"
    return {Outcome.FAIL: SPLIT, Outcome.PASS: ""}.get(outcome, MEASURE)


def _undecided(says: str, do_next: str, field: str) -> Finding:
    return Finding(
        about=RULE,
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.INSTALLATION_CODE,
        do_next=do_next,
        field=field,
    )
