"""What smooth DC through a device means for its protection: findings, with the model's figures.

Only a declared tolerance gives a pass. The model never does: it says how bad things may be.
"""

from __future__ import annotations

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
from checkers.judgement.dc.fitness import FIND_THE_DC
from checkers.judgement.limits.numbers import figure_numbers
from checkers.judgement.readings.any_reading import judge_reading
from checkers.physics.core.dc_sensing import DcOpening
from checkers.physics.core.parameters import CORE
from checkers.physics.core.trip_band import TripBand

FITNESS = "smooth DC through the device"
TRIP = "AC trip current with this DC"
MODEL = cite("trade-practice", "bench points the model is fitted to", "derived")


def judge_dc_bias(asked: DcBiasCase) -> list[Finding]:
    """Return the findings on a device with smooth DC through it."""
    if asked.case.device.form not in CORE.forms:
        return [_other_kind(asked)]
    return [*_own_trip_current(asked), _fitness(asked), *_trip(asked)]


def _other_kind(asked: DcBiasCase) -> Finding:
    return Finding(
        about=FITNESS,
        outcome=Outcome.CANNOT_SAY,
        says="Nothing was judged: the model is of the sensing core of an RCD that trips by "
        "itself, and this form is of another kind.",
        judges=Judges.FITNESS_FOR_DC,
        measured=format_quantity(asked.dc, "mA"),
        measured_as=MeasuredAs.GIVEN,
        field="device.form",
    )


def _own_trip_current(asked: DcBiasCase) -> list[Finding]:
    """Return what is wrong with the trip current measured without DC, or what it lacks."""
    if asked.measured_own is None:
        return []
    value = format_quantity(asked.measured_own, "mA")
    reading = Reading(value=value, test=Test.RAMP, waveform=Waveform.AC)
    return [
        replace(one.finding, about="trip current without DC", field="own_trip_current")
        for one in judge_reading(reading, asked.case)
        if one.finding.outcome is not Outcome.PASS
    ]


def _fitness(asked: DcBiasCase) -> Finding:
    row = asked.tolerated_row
    if asked.dc == 0.0:
        return _fitness_finding(
            asked,
            Outcome.CANNOT_SAY,
            "Without smooth DC there is nothing to judge: this says nothing of what equipment on "
            "the circuit may give.",
        )
    if row is None:
        says = "How much smooth DC the device bears depends on its type, which is not given."
        return _fitness_finding(asked, Outcome.CANNOT_SAY, says, field="device.type")
    if row.undeclared:
        says = f"No smooth DC is declared for type {asked.case.device.type}: none may be assumed."
        return _fitness_finding(asked, Outcome.FAIL, says)
    if asked.tolerated is None:
        return _rating_missing(asked)
    return _against_declared(asked, asked.tolerated)


def _rating_missing(asked: DcBiasCase) -> Finding:
    says = "How much smooth DC this type bears depends on its rating, which is not given."
    return _fitness_finding(asked, Outcome.CANNOT_SAY, says, "device.rated_residual_current")


def _against_declared(asked: DcBiasCase, tolerated: float) -> Finding:
    words = (
        f"Type {asked.case.device.type} is declared to bear {format_quantity(tolerated, 'mA')} "
        "of smooth DC with its AC operation in order"
    )
    if asked.dc <= tolerated:
        says = f"{words}. Allow for the uncertainty of the clamp if the DC was measured."
        return _fitness_finding(asked, Outcome.PASS, says)
    if not asked.case.device.senses_smooth_dc:
        return _fitness_finding(asked, Outcome.FAIL, f"{words}; this is more.")
    if asked.opening is None:
        return _rating_missing(asked)
    return _beyond_what_a_dc_sensing_type_declares(asked, words, asked.opening)


def _beyond_what_a_dc_sensing_type_declares(
    asked: DcBiasCase, words: str, opening: DcOpening
) -> Finding:
    at = format_quantity(opening.must_at, "mA")
    if asked.dc >= opening.must_at:
        says = (
            f"At {at} of smooth DC it must have opened by itself. A device that carries this "
            "much and stays closed is defective; one that opens leaves no supply until the DC "
            "is gone."
        )
        return _fitness_finding(asked, Outcome.FAIL, says)
    says = (
        f"{words}; this is more. It senses DC, so it is not blinded: the DC alone may open it "
        f"from {format_quantity(opening.may_from, 'mA')} on, and must at {at}."
    )
    return _fitness_finding(asked, Outcome.CANNOT_SAY, says)


def _trip(asked: DcBiasCase) -> list[Finding]:
    """Return what the model says of DC beyond what is declared, for a core that saturates."""
    beyond = asked.tolerated is None or asked.dc > asked.tolerated
    if not beyond or asked.dc == 0.0 or asked.case.device.senses_smooth_dc:
        return []
    if not asked.modelled:
        says = "Give the rated residual current, or the trip current without DC."
        return [_trip_finding(asked, Outcome.CANNOT_SAY, says, "device.rated_residual_current")]
    reads = f"The model expects it to open at {band_words(asked.trip)} of AC{_if_ac(asked)}."
    rated = asked.rated
    if rated is None:
        return [_trip_finding(asked, Outcome.CANNOT_SAY, reads, "device.rated_residual_current")]
    blind = asked.trip.low > rated
    says = f"{reads} {_meaning(asked.trip, rated)} {button_words(asked.button, rated)}"
    return [_trip_finding(asked, Outcome.FAIL if blind else Outcome.CANNOT_SAY, says)]


def _if_ac(asked: DcBiasCase) -> str:
    return "" if asked.type_known else " if it is type AC"


def _meaning(trip: TripBand, rated: float) -> str:
    at = format_quantity(rated, "mA")
    if trip.low > rated:
        return f"A fault current of {at} would not open it: its protection is gone."
    if trip.high > rated:
        return f"At {at} it may or may not open: only a test with this DC flowing would show."
    return f"It may still open at {at}, but nobody declares that: devices scatter."


def band_words(band: TripBand) -> str:
    """Return a band as it is shown: about 66 mA (49 mA to 72 mA)."""
    span = range_in_words(band.low, band.high, "mA", 2)
    return f"about {format_quantity(band.typical, 'mA', 2)} ({span})"


def _fitness_finding(asked: DcBiasCase, outcome: Outcome, says: str, field: str = "") -> Finding:
    tolerated = asked.tolerated
    none = asked.tolerated_row is not None and asked.tolerated_row.undeclared
    opening = asked.opening_band
    beyond = tolerated is not None and asked.dc > tolerated
    limit = None if tolerated is None else Limit("mA", at_most=tolerated)
    return Finding(
        about=FITNESS,
        outcome=outcome,
        says=says,
        judges=Judges.FITNESS_FOR_DC,
        measured=format_quantity(asked.dc, "mA"),
        measured_as=MeasuredAs.GIVEN,
        limit="none declared" if none else str(limit or ""),
        do_next="" if outcome is Outcome.PASS else FIND_THE_DC if asked.dc else "",
        field=field or "dc_residual",
        sources=citations(asked.tolerated_row, *(opening.rows if opening and beyond else ())),
        numbers=None if limit is None else figure_numbers(asked.dc, limit),
    )


def _trip_finding(
    asked: DcBiasCase, outcome: Outcome, says: str, field: str = "dc_residual"
) -> Finding:
    button: tuple[Citation, ...] = (CORE.button.citation,) if asked.rated is not None else ()
    return Finding(
        about=TRIP,
        outcome=outcome,
        says=says,
        judges=Judges.FUNCTION,
        limit="" if asked.rated is None else str(Limit("mA", at_most=asked.rated)),
        measured="" if not asked.modelled else f"{band_words(asked.trip)}, modelled",
        measured_as=MeasuredAs.CALCULATED,
        do_next="Measure the trip current with a ramp test, with and without the DC.",
        field=field,
        sources=(MODEL, CORE.in_print_citation, *button),
        numbers=_trip_numbers(asked),
    )


def _trip_numbers(asked: DcBiasCase) -> Numbers | None:
    if asked.rated is None or not asked.modelled:
        return None
    trip, limit = asked.trip, Limit("mA", at_most=asked.rated)
    return figure_numbers(trip.typical, limit, trip.low, trip.high)
