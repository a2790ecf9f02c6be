"""Is a set-up that injects DC safe to build, and will it show anything?"""

from __future__ import annotations

from dataclasses import replace

from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Numbers, Outcome
from checkers.judgement.dc.bias import band_words
from checkers.judgement.dc.bias_case import DcBiasCase
from checkers.judgement.limits.numbers import figure_numbers
from checkers.physics.core.injection import Injection
from checkers.physics.core.injection_rules import INJECTION
from checkers.physics.core.parameters import CORE

SEEN = "what will be seen"
FEWER_TURNS = "Take fewer turns and a higher voltage of the source, or less DC."


def judge_set_up(injection: Injection) -> list[Finding]:
    """Return the findings on source and resistor; a source too high leaves nothing else to say."""
    if injection.supply_voltage > INJECTION.supply.value:
        return [_supply(injection)]
    return [_supply(injection), _resistor(injection)]


def supply_is_safe(injection: Injection) -> bool:
    """Tell whether the source is within the voltage that may be touched."""
    return injection.supply_voltage <= INJECTION.supply.value


def _supply(injection: Injection) -> Finding:
    rule, safe = INJECTION.supply, supply_is_safe(injection)
    limit = Limit("V", at_most=rule.value)
    most = format_quantity(rule.value, "V")
    return Finding(
        about="voltage of the DC source",
        outcome=Outcome.PASS if safe else Outcome.FAIL,
        says=f"Ripple-free DC up to {most} from a safety source needs no cover in a dry place. "
        "That the source is separated, ripple-free and current limited is for you to check."
        if safe
        else f"Above {most} of DC this may not lie open on a bench: no resistor is given for it.",
        judges=Judges.INSTALLATION_CODE,
        measured=format_quantity(injection.supply_voltage, "V"),
        measured_as=MeasuredAs.GIVEN,
        limit=str(limit),
        do_next="" if safe else "Use a safety source of 12 V or 24 V, and more turns.",
        field="supply_voltage",
        sources=(rule.citation,),
        numbers=figure_numbers(injection.supply_voltage, limit),
    )


def _resistor(injection: Injection) -> Finding:
    if injection.standard_value < INJECTION.resistance.value:
        says = "So low a resistor leaves the current to leads and contacts: use more turns."
        least = INJECTION.resistance.value
        numbers = figure_numbers(injection.standard_value, Limit("ohm", at_least=least))
        return _resistor_finding(
            injection, Outcome.FAIL, says, numbers, INJECTION.resistance.citation
        )
    if injection.loading < INJECTION.loading.value:
        return _loads_the_core(injection)
    numbers = figure_numbers(injection.power, Limit("W", at_most=INJECTION.heat.value))
    rating = injection.power_rating
    if injection.power > INJECTION.heat.value or rating is None:
        says = "So much heat on a bench burns people and things: use more turns or less voltage."
        return _resistor_finding(injection, Outcome.FAIL, says, numbers, INJECTION.heat.citation)
    says = (
        f"It turns {format_quantity(injection.power, 'W', 2)} into heat; rated "
        f"{format_quantity(rating, 'W')} it has the margin wanted."
    )
    return _resistor_finding(injection, Outcome.PASS, says, numbers, INJECTION.margin.citation)


def _loads_the_core(injection: Injection) -> Finding:
    rule = INJECTION.loading
    seen = format_quantity(injection.loading, "ohm", 2)
    says = (
        f"So many turns with so low a resistor load the core as a second winding: {seen} seen from "
        "one turn. That alone would raise the trip current, and show what DC does not do."
    )
    numbers = figure_numbers(injection.loading, Limit("ohm", at_least=rule.value))
    finding = _resistor_finding(injection, Outcome.FAIL, says, numbers, rule.citation)
    return replace(finding, do_next=FEWER_TURNS)


def _resistor_finding(
    injection: Injection, outcome: Outcome, says: str, numbers: Numbers, source: Citation
) -> Finding:
    value = format_quantity(injection.standard_value, "ohm")
    return Finding(
        about="resistor",
        outcome=outcome,
        says=says,
        judges=Judges.FUNCTION,
        measured=f"{value}, {format_quantity(injection.power, 'W', 2)}",
        measured_as=MeasuredAs.CALCULATED,
        limit=str(Limit(numbers.unit, numbers.at_least, numbers.at_most)),
        numbers=numbers,
        do_next="" if outcome is Outcome.PASS else "Raise the turns, or lower the voltage.",
        field="turns",
        sources=(source, INJECTION.preferred_citation),
    )


def judge_what_is_seen(asked: DcBiasCase) -> Finding:
    """Return the finding on what the demonstration will show with the device named."""
    if not asked.modelled or not asked.type_known or asked.rated is None:
        says = "What will be seen depends on the device: give its type, rating and form."
        return _seen(asked, Outcome.CANNOT_SAY, says, "device")
    if asked.opening_band is not None:
        return _seen_with_a_type_that_senses_dc(asked)
    if asked.trip.low > asked.own.high:
        says = (
            f"The AC trip current should rise from {band_words(asked.own)} to "
            f"{band_words(asked.trip)}: the difference shows."
        )
        return _seen(asked, Outcome.PASS, says)
    says = (
        f"With this DC the device may open at {band_words(asked.trip)}, without at "
        f"{band_words(asked.own)}: the difference may not show. Use more DC, or measure its own "
        "trip current first."
    )
    return _seen(asked, Outcome.CANNOT_SAY, says)


def _seen_with_a_type_that_senses_dc(asked: DcBiasCase) -> Finding:
    says = {
        "must": "The device should open on the DC alone: that is what its type adds.",
        "may": "The device may open on the DC alone, or not: both are allowed.",
        "no": "Nothing should change: the DC neither blinds this type nor opens it.",
    }[asked.opens_on_the_dc]
    decided = asked.opens_on_the_dc != "may"
    return _seen(asked, Outcome.PASS if decided else Outcome.CANNOT_SAY, says)


def _seen(asked: DcBiasCase, outcome: Outcome, says: str, field: str = "dc_wanted") -> Finding:
    band = asked.opening_band
    points = tuple(one.citation for one in CORE.bench_points[:1]) if asked.modelled else ()
    return Finding(
        about=SEEN,
        outcome=outcome,
        says=says,
        judges=Judges.FUNCTION,
        measured=f"{format_quantity(asked.dc, 'mA')} of residual DC",
        measured_as=MeasuredAs.CALCULATED,
        field=field,
        sources=band.sources if band else (*points, CORE.in_print_citation),
    )
