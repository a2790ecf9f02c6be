"""Is a set-up that injects DC safe to build, and will it show anything?"""

from __future__ import annotations

from collections.abc import Mapping

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
from checkers.wording.book import part
from checkers.wording.finding import NO_FACTS, finding

HAS_MARGIN = "dc.resistor-has-margin"


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
    return finding(
        "dc.source-safe-to-touch" if safe else "dc.source-voltage-too-high",
        Outcome.PASS if safe else Outcome.FAIL,
        Judges.INSTALLATION_CODE,
        {"most": format_quantity(rule.value, "V")},
        measured=format_quantity(injection.supply_voltage, "V"),
        measured_as=MeasuredAs.GIVEN,
        limit=str(limit),
        field="supply_voltage",
        sources=(rule.citation,),
        numbers=figure_numbers(injection.supply_voltage, limit),
    )


def _resistor(injection: Injection) -> Finding:
    least = INJECTION.resistance
    if injection.standard_value < least.value:
        numbers = figure_numbers(injection.standard_value, Limit("ohm", at_least=least.value))
        return _resistor_finding("dc.resistor-too-low", injection, numbers, least.citation)
    if injection.loading < INJECTION.loading.value:
        return _loads_the_core(injection)
    numbers = figure_numbers(injection.power, Limit("W", at_most=INJECTION.heat.value))
    rating = injection.power_rating
    if injection.power > INJECTION.heat.value or rating is None:
        return _resistor_finding("dc.resistor-too-hot", injection, numbers, INJECTION.heat.citation)
    facts = {
        "power": format_quantity(injection.power, "W", 2),
        "rating": format_quantity(rating, "W"),
    }
    return _resistor_finding(HAS_MARGIN, injection, numbers, INJECTION.margin.citation, facts)


def _loads_the_core(injection: Injection) -> Finding:
    rule = INJECTION.loading
    numbers = figure_numbers(injection.loading, Limit("ohm", at_least=rule.value))
    facts = {"seen": format_quantity(injection.loading, "ohm", 2)}
    return _resistor_finding("dc.resistor-loads-core", injection, numbers, rule.citation, facts)


def _resistor_finding(
    code: str,
    injection: Injection,
    numbers: Numbers,
    source: Citation,
    facts: Mapping[str, object] = NO_FACTS,
) -> Finding:
    value = format_quantity(injection.standard_value, "ohm")
    return finding(
        code,
        Outcome.PASS if code == HAS_MARGIN else Outcome.FAIL,
        Judges.FUNCTION,
        facts,
        measured=f"{value}, {format_quantity(injection.power, 'W', 2)}",
        measured_as=MeasuredAs.CALCULATED,
        limit=str(Limit(numbers.unit, numbers.at_least, numbers.at_most)),
        numbers=numbers,
        field="turns",
        sources=(source, INJECTION.preferred_citation),
    )


def judge_what_is_seen(asked: DcBiasCase) -> Finding:
    """Return the finding on what the demonstration will show with the device named."""
    if not asked.modelled or not asked.type_known or asked.rated is None:
        return _seen(asked, "dc.device-to-show-missing", Outcome.CANNOT_SAY, field="device")
    if asked.opening_band is not None:
        return _seen(asked, *OF_A_TYPE_THAT_SENSES_DC[asked.opens_on_the_dc])
    facts = {"without": band_words(asked.own), "with_dc": band_words(asked.trip)}
    if asked.trip.low > asked.own.high:
        return _seen(asked, "dc.difference-shows", Outcome.PASS, facts)
    return _seen(asked, "dc.difference-may-not-show", Outcome.CANNOT_SAY, facts)


OF_A_TYPE_THAT_SENSES_DC = {
    "must": ("dc.opens-on-dc-alone", Outcome.PASS),
    "may": ("dc.may-open-on-dc-alone", Outcome.CANNOT_SAY),
    "no": ("dc.nothing-changes", Outcome.PASS),
}


def _seen(
    asked: DcBiasCase,
    code: str,
    outcome: Outcome,
    facts: Mapping[str, object] = NO_FACTS,
    field: str = "dc_wanted",
) -> Finding:
    band = asked.opening_band
    points = tuple(one.citation for one in CORE.bench_points[:1]) if asked.modelled else ()
    return finding(
        code,
        outcome,
        Judges.FUNCTION,
        facts,
        measured=part("dc.residual-dc", dc=format_quantity(asked.dc, "mA")),
        measured_as=MeasuredAs.CALCULATED,
        field=field,
        sources=band.sources if band else (*points, CORE.in_print_citation),
    )
