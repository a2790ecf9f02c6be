"""An earth electrode against the touch voltage that may stay, for AC, in the cold and for DC."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from checkers.domain.device.device import Form
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row, citations
from checkers.domain.quantities.measured_value import Measured, Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Numbers, Outcome
from checkers.judgement.electrode.electrode import (
    Electrode,
    default_uncertainty,
    greatest_resistance,
    touch_voltage,
)
from checkers.judgement.limits.comparison import compare
from checkers.judgement.limits.numbers import reading_numbers
from checkers.judgement.limits.safe_rounding import rounded_down, rounded_up

TOO_HIGH = (
    "Improve the electrode or its connection, or fit a device with a lower rating; "
    "then measure again."
)
TOO_CLOSE = (
    "Measure again with a smaller uncertainty, in the driest season, or improve the electrode."
)
ALL_DIGITS = 9
DO_NOT_PROTECT: Mapping[str, str] = {
    Form.MONITOR: "A monitor warns and does not disconnect: no electrode is good enough for it.",
    Form.RDC_DD: "6 mA detection guards the RCD before it, and need not open on an AC fault.",
}
MEASURE_AGAIN = "Measure again in the driest season, and where the ground freezes, in frost."


@dataclass(frozen=True, slots=True)
class TouchVoltage:
    """One comparison: a current [mA], the voltage it may make [V], and what it is about."""

    about: str
    current: float
    limit: float
    judges: Judges
    sources: tuple[Citation, ...]
    note: str = ""

    @property
    def may_stay(self) -> Limit:
        """The voltage that may stay, as a limit [V]."""
        return Limit("V", at_most=self.limit)


def judge_touch_voltage(electrode: Electrode) -> list[Finding]:
    """Return the findings on the touch voltage: AC, in the cold where asked, and DC."""
    rated, limit = electrode.rated, electrode.ac_limit
    if not electrode.case.device.protects:
        return [_does_not_protect(electrode)]
    if electrode.ac_row is None or limit is None:
        return [_no_rule(electrode)]
    if rated is None:
        return [_rating_missing(electrode, limit)]
    if electrode.resistance is None:
        return [_resistance_missing(electrode, limit, rated)]
    asked = [_for_ac(electrode, rated, limit), *_in_the_cold(electrode, rated, limit)]
    return [_judged(electrode, electrode.resistance, one) for one in (*asked, *_for_dc(electrode))]


def _for_ac(electrode: Electrode, rated: float, limit: float) -> TouchVoltage:
    stable = CONSTANTS["electrode_stable_up_to"]
    sources = citations(electrode.ac_row)
    if (electrode.resistance or 0.0) <= stable.value:
        return TouchVoltage("touch voltage", rated, limit, Judges.INSTALLATION_CODE, sources)
    note = (
        f"Stability: above {format_quantity(stable.value, 'ohm')} an electrode may not stay "
        "stable as the soil dries or freezes."
    )
    sources = (*sources, stable.citation)
    return TouchVoltage("touch voltage", rated, limit, Judges.INSTALLATION_CODE, sources, note)


def _in_the_cold(electrode: Electrode, rated: float, limit: float) -> list[TouchVoltage]:
    if not electrode.in_the_cold:
        return []
    factor = CONSTANTS["operating_factor_in_the_cold"]
    sources = (*citations(electrode.ac_row), factor.citation)
    about = "touch voltage in the cold"
    note = f"In the cold the device may need {factor.value:g} times its rating."
    current = rated * factor.value
    return [TouchVoltage(about, current, limit, Judges.DEVICE_STANDARD, sources, note)]


def _for_dc(electrode: Electrode) -> list[TouchVoltage]:
    band, limit = electrode.dc_band, electrode.dc_limit
    if band is None or band.at_most is None or limit is None:
        return []
    sources = citations(electrode.dc_row, *band.rows)
    operates = f"It operates by {format_quantity(band.at_most, 'mA')} of smooth DC."
    note = operates + _at_ac(electrode, band.at_most)
    about = "touch voltage, smooth DC"
    return [TouchVoltage(about, band.at_most, limit, Judges.FITNESS_FOR_DC, sources, note)]


def _at_ac(electrode: Electrode, current: float) -> str:
    """Return what the limit for AC would ask, which is the more careful figure."""
    if electrode.ac_limit is None:
        return ""
    greatest = rounded_down(greatest_resistance(electrode.ac_limit, current))
    return (
        f" Held to the {format_quantity(electrode.ac_limit, 'V')} of AC, which is more careful, "
        f"it would be at most {format_quantity(greatest, 'ohm', ALL_DIGITS)}."
    )


def _judged(electrode: Electrode, resistance: float, asked: TouchVoltage) -> Finding:
    greatest = greatest_resistance(asked.limit, asked.current)
    voltage = touch_voltage(resistance, asked.current)
    outcome = _outcome(electrode, voltage, asked)
    shown = format_quantity(rounded_up(voltage), "V")
    says = (
        f"{format_quantity(resistance, 'ohm', ALL_DIGITS)} × "
        f"{format_quantity(asked.current, 'mA')} makes {shown}; "
        f"{format_quantity(asked.limit, 'V')} may stay, so at most "
        f"{format_quantity(rounded_down(greatest), 'ohm', ALL_DIGITS)}."
    )
    close = outcome is Outcome.BORDERLINE
    return Finding(
        about=asked.about,
        outcome=outcome,
        says=_joined(says, _closeness(electrode) if close else "", asked.note),
        judges=asked.judges,
        measured=shown,
        measured_as=MeasuredAs.CALCULATED,
        limit=str(asked.may_stay),
        margin=round(asked.limit - voltage, 9),
        do_next=_next_step(outcome, asked),
        field="electrode_resistance",
        sources=(*asked.sources, *_uncertainty_source(electrode, close=close)),
        numbers=_numbers(electrode, rounded_up(voltage), asked),
    )


def _numbers(electrode: Electrode, voltage: float, asked: TouchVoltage) -> Numbers | None:
    greatest = greatest_resistance(asked.limit, asked.current)
    spread = touch_voltage(electrode.uncertainty(greatest, Outcome.PASS), asked.current)
    return reading_numbers(Measured(Said.FIGURE, voltage, "V"), asked.may_stay, spread)


def _outcome(electrode: Electrode, voltage: float, asked: TouchVoltage) -> Outcome:
    """Return pass or fail where it is sure enough, each with its own uncertainty."""
    greatest = greatest_resistance(asked.limit, asked.current)
    for outcome in (Outcome.PASS, Outcome.FAIL):
        spread = touch_voltage(electrode.uncertainty(greatest, outcome), asked.current)
        measured, limit = Measured(Said.FIGURE, voltage, "V"), asked.may_stay
        if compare(measured, limit, spread, JUDGING.confidence).outcome is outcome:
            return outcome
    return Outcome.BORDERLINE


def _joined(*parts: str) -> str:
    return " ".join(part for part in parts if part)


def _closeness(electrode: Electrode) -> str:
    if electrode.stated_uncertainty is not None:
        return "That is too close to tell with this uncertainty of the resistance."
    share = default_uncertainty(Outcome.PASS).value
    return f"That is too close to tell: an instrument may be {share:g} % out."


def _uncertainty_source(electrode: Electrode, *, close: bool) -> tuple[Citation, ...]:
    taken = close and electrode.stated_uncertainty is None
    return (default_uncertainty(Outcome.PASS).citation,) if taken else ()


def _next_step(outcome: Outcome, asked: TouchVoltage) -> str:
    if outcome is Outcome.FAIL:
        return TOO_HIGH
    if outcome is Outcome.BORDERLINE:
        return TOO_CLOSE
    return MEASURE_AGAIN if asked.note.startswith("Stability") else ""


def _undecided(
    says: str, do_next: str, field: str, limit: float | None = None, row: Row | None = None
) -> Finding:
    return Finding(
        about="touch voltage",
        outcome=Outcome.CANNOT_SAY,
        says=says,
        judges=Judges.INSTALLATION_CODE,
        limit="" if limit is None else str(Limit("V", at_most=limit)),
        do_next=do_next,
        field=field,
        sources=citations(row),
    )


def _does_not_protect(electrode: Electrode) -> Finding:
    says = DO_NOT_PROTECT[electrode.case.device.form]
    do_next = "Name the device that disconnects on an AC fault, and its rating."
    return _undecided(says, do_next, "device.form")


def _no_rule(electrode: Electrode) -> Finding:
    name = electrode.case.code.name
    says = f"No touch-voltage rule is carried for {name}, so nothing was judged."
    return _undecided(says, "Ask the authority that decides where you are.", "code")


def _rating_missing(electrode: Electrode, limit: float) -> Finding:
    says = "The rated residual current is not given, and the touch voltage depends on it."
    field = "device.rated_residual_current"
    return _undecided(says, "Read IΔn on the device.", field, limit, electrode.ac_row)


def _resistance_missing(electrode: Electrode, limit: float, rated: float) -> Finding:
    greatest = rounded_down(greatest_resistance(limit, rated))
    says = (
        "No resistance was given, so nothing was judged; "
        f"at most {format_quantity(greatest, 'ohm', ALL_DIGITS)} would do."
    )
    do_next = "Measure the resistance of the electrode, or the earth fault loop."
    return _undecided(says, do_next, "electrode_resistance", limit, electrode.ac_row)
