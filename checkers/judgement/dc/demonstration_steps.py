"""The order of steps of a demonstration, and the readings to expect."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.dc.bias import band_words
from checkers.judgement.dc.bias_case import DcBiasCase
from checkers.physics.core.button_under_bias import ButtonOperates, button_operates
from checkers.physics.core.injection import Injection
from checkers.physics.core.trip_band import TripBand
from checkers.wording.book import part


def steps(injection: Injection) -> list[str]:
    """Return what to do, in order, on the bench."""
    return [
        part("dc.step-apart"),
        part("dc.step-supply"),
        part("dc.step-residual"),
        _wire(injection),
        _source(injection),
        part("dc.step-without-dc"),
        _switch_on(injection),
        part("dc.step-with-dc"),
        part("dc.step-turned-round"),
        part("dc.step-afterwards"),
    ]


def _wire(injection: Injection) -> str:
    once = injection.turns == 1
    return part("dc.step-wire-once" if once else "dc.step-wire-turns", turns=injection.turns)


def _source(injection: Injection) -> str:
    rating = injection.power_rating
    return part(
        "dc.step-source" if rating is None else "dc.step-source-rated",
        resistor=format_quantity(injection.standard_value, "ohm"),
        rating="" if rating is None else format_quantity(rating, "W"),
        voltage=format_quantity(injection.supply_voltage, "V"),
        current_limit=format_quantity(injection.current_limit, "mA", 2),
    )


def _switch_on(injection: Injection) -> str:
    return part(
        "dc.step-switch-on",
        current=format_quantity(injection.current, "mA", 3),
        dc=format_quantity(injection.dc_residual, "mA", 3),
    )


def expected_readings(asked: DcBiasCase) -> list[dict[str, str]]:
    """Return a row for each test: what it should give without the DC and with it."""
    rated = asked.rated
    if not asked.modelled or not asked.type_known or rated is None:
        return []
    without, with_dc = asked.own, asked.trip
    opens = with_dc.high > 0.0
    return [
        {
            "test": part("dc.slowly-rising-ac"),
            "without_dc": band_words(without),
            "with_dc": band_words(with_dc) if opens else part("dc.open-before-it-starts"),
        },
        {
            "test": part("dc.ac-of", current=format_quantity(rated, "mA")),
            "without_dc": _at(rated, without),
            "with_dc": _at(rated, with_dc),
        },
        {
            "test": part("dc.test-button"),
            "without_dc": _button(without, rated),
            "with_dc": _button(with_dc, rated),
            "holds": part("dc.at-rated-voltage-only"),
        },
    ]


def _at(current: float, trip: TripBand) -> str:
    if trip.high <= current:
        return part("dc.opens")
    return part("dc.does-not-open" if trip.low > current else "dc.may-or-may-not-open")


def _button(trip: TripBand, rated: float) -> str:
    if trip.high == 0.0:
        return part("dc.open-before-it-is-pressed")
    return part(BUTTON[button_operates(trip, rated)])


BUTTON = {
    ButtonOperates.YES: "dc.operates",
    ButtonOperates.NO: "dc.does-not-operate",
    ButtonOperates.CANNOT_SAY: "dc.may-or-may-not-operate",
}
