"""What smooth DC through a device means for its protection: findings, with the model's figures.

Only a declared tolerance gives a pass. The model never does: it says how bad things may be.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from checkers.domain.device.readings import Reading, Test, Waveform
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import citations
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.quantities.ranges import range_in_words
from checkers.domain.sources.documents import Citation, cite
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Numbers, Outcome
from checkers.judgement.dc.bias_case import DcBiasCase
from checkers.judgement.dc.button_words import button_words
from checkers.judgement.limits.numbers import figure_numbers
from checkers.judgement.readings.any_reading import judge_reading
from checkers.physics.core.dc_sensing import DcOpening
from checkers.physics.core.parameters import CORE
from checkers.physics.core.trip_band import TripBand
from checkers.wording.book import part
from checkers.wording.finding import NO_FACTS, finding

RATING = "device.rated_residual_current"
BLINDED = "dc.blinded"
MODEL = cite("trade-practice", "bench points the model is fitted to", "derived")


def judge_dc_bias(asked: DcBiasCase) -> list[Finding]:
    """Return the findings on a device with smooth DC through it."""
    if asked.case.device.form not in CORE.forms:
        return [_other_kind(asked)]
    return [*_own_trip_current(asked), _fitness(asked), *_trip(asked)]


def _other_kind(asked: DcBiasCase) -> Finding:
    return finding(
        "dc.form-not-modelled",
        Outcome.CANNOT_SAY,
        Judges.FITNESS_FOR_DC,
        measured=format_quantity(asked.dc, "mA"),
        measured_as=MeasuredAs.GIVEN,
        field="device.form",
    )


def _own_trip_current(asked: DcBiasCase) -> list[Finding]:
    """Return what is wrong with the trip current measured without DC, or what it lacks."""
    if asked.measured_own is None:
        return []
    value, about = format_quantity(asked.measured_own, "mA"), part("dc.trip-current-without-dc")
    reading = Reading(value=value, test=Test.RAMP, waveform=Waveform.AC)
    return [
        replace(one.finding, about=about, field="own_trip_current")
        for one in judge_reading(reading, asked.case)
        if one.finding.outcome is not Outcome.PASS
    ]


def _fitness(asked: DcBiasCase) -> Finding:
    row = asked.tolerated_row
    if asked.dc == 0.0:
        return _fitness_finding(asked, "dc.given-none", Outcome.CANNOT_SAY)
    if row is None:
        missing = "dc.given-type-missing"
        return _fitness_finding(asked, missing, Outcome.CANNOT_SAY, field="device.type")
    if row.undeclared:
        facts = {"type": asked.case.device.type}
        return _fitness_finding(asked, "dc.given-where-none-declared", Outcome.FAIL, facts)
    if asked.tolerated is None:
        return _rating_missing(asked)
    return _against_declared(asked, asked.tolerated)


def _rating_missing(asked: DcBiasCase) -> Finding:
    field = "device.rated_residual_current"
    return _fitness_finding(asked, "dc.given-rating-missing", Outcome.CANNOT_SAY, field=field)


def _against_declared(asked: DcBiasCase, tolerated: float) -> Finding:
    facts = {"type": asked.case.device.type, "tolerated": format_quantity(tolerated, "mA")}
    if asked.dc <= tolerated:
        return _fitness_finding(asked, "dc.given-within-declared", Outcome.PASS, facts)
    if not asked.case.device.senses_smooth_dc:
        return _fitness_finding(asked, "dc.given-over-declared", Outcome.FAIL, facts)
    if asked.opening is None:
        return _rating_missing(asked)
    return _beyond_what_a_dc_sensing_type_declares(asked, facts, asked.opening)


def _beyond_what_a_dc_sensing_type_declares(
    asked: DcBiasCase, declared: Mapping[str, object], opening: DcOpening
) -> Finding:
    facts = {
        **declared,
        "must_at": format_quantity(opening.must_at, "mA"),
        "may_from": format_quantity(opening.may_from, "mA"),
    }
    if asked.dc >= opening.must_at:
        return _fitness_finding(asked, "dc.given-must-have-opened-it", Outcome.FAIL, facts)
    code = "dc.given-over-declared-may-open-it"
    return _fitness_finding(asked, code, Outcome.CANNOT_SAY, facts)


def _trip(asked: DcBiasCase) -> list[Finding]:
    """Return what the model says of DC beyond what is declared, for a core that saturates."""
    beyond = asked.tolerated is None or asked.dc > asked.tolerated
    if not beyond or asked.dc == 0.0 or asked.case.device.senses_smooth_dc:
        return []
    if not asked.modelled:
        return [_trip_finding(asked, "dc.trip-not-modelled", field=RATING)]
    rated, expects = asked.rated, {"expects": _expects(asked)}
    if rated is None:
        return [_trip_finding(asked, "dc.trip-without-rating", expects, field=RATING)]
    button = button_words(asked.button, rated)
    facts = {**expects, "rated": format_quantity(rated, "mA"), "button": button}
    return [_trip_finding(asked, _trip_code(asked.trip, rated), facts)]


def _expects(asked: DcBiasCase) -> str:
    known = asked.type_known
    code = "dc.model-expects" if known else "dc.model-expects-if-type-ac"
    return part(code, band=band_words(asked.trip))


def _trip_code(trip: TripBand, rated: float) -> str:
    if trip.low > rated:
        return BLINDED
    return "dc.may-be-blinded" if trip.high > rated else "dc.may-still-open"


def band_words(band: TripBand) -> str:
    """Return a band as it is shown: about 66 mA (49 mA to 72 mA)."""
    span = range_in_words(band.low, band.high, "mA", 2)
    return part("dc.band", typical=format_quantity(band.typical, "mA", 2), span=span)


def _fitness_finding(
    asked: DcBiasCase,
    code: str,
    outcome: Outcome,
    facts: Mapping[str, object] = NO_FACTS,
    field: str = "dc_residual",
) -> Finding:
    tolerated = asked.tolerated
    none = asked.tolerated_row is not None and asked.tolerated_row.undeclared
    opening = asked.opening_band
    beyond = tolerated is not None and asked.dc > tolerated
    limit = None if tolerated is None else Limit("mA", at_most=tolerated)
    return finding(
        code,
        outcome,
        Judges.FITNESS_FOR_DC,
        facts,
        measured=format_quantity(asked.dc, "mA"),
        measured_as=MeasuredAs.GIVEN,
        limit=part("dc.none-declared") if none else str(limit or ""),
        field=field,
        sources=citations(asked.tolerated_row, *(opening.rows if opening and beyond else ())),
        numbers=None if limit is None else figure_numbers(asked.dc, limit),
    )


def _trip_finding(
    asked: DcBiasCase,
    code: str,
    facts: Mapping[str, object] = NO_FACTS,
    field: str = "dc_residual",
) -> Finding:
    button: tuple[Citation, ...] = (CORE.button.citation,) if asked.rated is not None else ()
    return finding(
        code,
        Outcome.FAIL if code == BLINDED else Outcome.CANNOT_SAY,
        Judges.FUNCTION,
        facts,
        limit="" if asked.rated is None else str(Limit("mA", at_most=asked.rated)),
        measured=part("dc.modelled", band=band_words(asked.trip)) if asked.modelled else "",
        measured_as=MeasuredAs.CALCULATED,
        field=field,
        sources=(MODEL, CORE.in_print_citation, *button),
        numbers=_trip_numbers(asked),
    )


def _trip_numbers(asked: DcBiasCase) -> Numbers | None:
    if asked.rated is None or not asked.modelled:
        return None
    trip, limit = asked.trip, Limit("mA", at_most=asked.rated)
    return figure_numbers(trip.typical, limit, trip.low, trip.high)
