"""An earth electrode against the touch voltage that may stay, for AC, in the cold and for DC."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from checkers.domain.device.device import Form
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import citations
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
from checkers.wording.book import part
from checkers.wording.finding import NO_FACTS, finding

ALL_DIGITS = 9
DO_NOT_PROTECT: Mapping[str, str] = {
    Form.MONITOR: "electrode.monitor-does-not-disconnect",
    Form.RDC_DD: "electrode.dc-detection-does-not-disconnect",
}
Codes = Mapping[Outcome, str]
STABLE: Codes = {
    Outcome.PASS: "electrode.touch-voltage-within",
    Outcome.FAIL: "electrode.touch-voltage-over",
    Outcome.BORDERLINE: "electrode.touch-voltage-close",
}
UNSTABLE: Codes = {
    Outcome.PASS: "electrode.touch-voltage-within-if-stable",
    Outcome.FAIL: "electrode.touch-voltage-over-and-unstable",
    Outcome.BORDERLINE: "electrode.touch-voltage-close-and-unstable",
}
IN_THE_COLD: Codes = {
    Outcome.PASS: "electrode.touch-voltage-in-cold-within",
    Outcome.FAIL: "electrode.touch-voltage-in-cold-over",
    Outcome.BORDERLINE: "electrode.touch-voltage-in-cold-close",
}
SMOOTH_DC: Codes = {
    Outcome.PASS: "electrode.dc-touch-voltage-within",
    Outcome.FAIL: "electrode.dc-touch-voltage-over",
    Outcome.BORDERLINE: "electrode.dc-touch-voltage-close",
}


@dataclass(frozen=True, slots=True)
class TouchVoltage:
    """One comparison: a current [mA], the voltage it may make [V], and what each outcome is."""

    codes: Codes
    current: float
    limit: float
    judges: Judges
    sources: tuple[Citation, ...]
    facts: Mapping[str, object] = NO_FACTS

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
        return TouchVoltage(STABLE, rated, limit, Judges.INSTALLATION_CODE, sources)
    facts = {"stable": format_quantity(stable.value, "ohm")}
    sources = (*sources, stable.citation)
    return TouchVoltage(UNSTABLE, rated, limit, Judges.INSTALLATION_CODE, sources, facts)


def _in_the_cold(electrode: Electrode, rated: float, limit: float) -> list[TouchVoltage]:
    if not electrode.in_the_cold:
        return []
    factor = CONSTANTS["operating_factor_in_the_cold"]
    sources = (*citations(electrode.ac_row), factor.citation)
    facts = {"factor": f"{factor.value:g}"}
    current = rated * factor.value
    return [TouchVoltage(IN_THE_COLD, current, limit, Judges.DEVICE_STANDARD, sources, facts)]


def _for_dc(electrode: Electrode) -> list[TouchVoltage]:
    band, dc, ac = electrode.dc_band, electrode.dc_limit, electrode.ac_limit
    if band is None or band.at_most is None or dc is None or ac is None:
        return []
    sources = citations(electrode.dc_row, *band.rows)
    facts = {
        "ac_limit": format_quantity(ac, "V"),
        "greatest_by_ac": _greatest_words(ac, band.at_most),
    }
    return [TouchVoltage(SMOOTH_DC, band.at_most, dc, Judges.FITNESS_FOR_DC, sources, facts)]


def _greatest_words(limit: float, current: float) -> str:
    greatest = rounded_down(greatest_resistance(limit, current))
    return format_quantity(greatest, "ohm", ALL_DIGITS)


def _judged(electrode: Electrode, resistance: float, asked: TouchVoltage) -> Finding:
    voltage = touch_voltage(resistance, asked.current)
    outcome = _outcome(electrode, voltage, asked)
    shown = format_quantity(rounded_up(voltage), "V")
    facts = {
        "resistance": format_quantity(resistance, "ohm", ALL_DIGITS),
        "current": format_quantity(asked.current, "mA"),
        "voltage": shown,
        "limit": format_quantity(asked.limit, "V"),
        "greatest": _greatest_words(asked.limit, asked.current),
        "closeness": _closeness(electrode),
    }
    close = outcome is Outcome.BORDERLINE
    return finding(
        asked.codes[outcome],
        outcome,
        asked.judges,
        {**facts, **asked.facts},
        measured=shown,
        measured_as=MeasuredAs.CALCULATED,
        limit=str(asked.may_stay),
        margin=round(asked.limit - voltage, 9),
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


def _closeness(electrode: Electrode) -> str:
    if electrode.stated_uncertainty is not None:
        return part("electrode.too-close-as-stated")
    share = f"{default_uncertainty(Outcome.PASS).value:g}"
    return part("electrode.too-close-as-permitted", share=share)


def _uncertainty_source(electrode: Electrode, *, close: bool) -> tuple[Citation, ...]:
    taken = close and electrode.stated_uncertainty is None
    return (default_uncertainty(Outcome.PASS).citation,) if taken else ()


def _undecided(code: str, facts: Mapping[str, object] = NO_FACTS, **rest: Any) -> Finding:
    return finding(code, Outcome.CANNOT_SAY, Judges.INSTALLATION_CODE, facts, **rest)


def _does_not_protect(electrode: Electrode) -> Finding:
    return _undecided(DO_NOT_PROTECT[electrode.case.device.form], field="device.form")


def _no_rule(electrode: Electrode) -> Finding:
    facts = {"code": electrode.case.code.name}
    return _undecided("electrode.no-touch-voltage-rule", facts, field="code")


def _rating_missing(electrode: Electrode, limit: float) -> Finding:
    return _undecided(
        "electrode.rating-missing",
        field="device.rated_residual_current",
        limit=str(Limit("V", at_most=limit)),
        sources=citations(electrode.ac_row),
    )


def _resistance_missing(electrode: Electrode, limit: float, rated: float) -> Finding:
    return _undecided(
        "electrode.resistance-missing",
        {"greatest": _greatest_words(limit, rated)},
        field="electrode_resistance",
        limit=str(Limit("V", at_most=limit)),
        sources=citations(electrode.ac_row),
    )
