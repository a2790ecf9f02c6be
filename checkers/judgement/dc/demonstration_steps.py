"""The order of steps of a demonstration, and the readings to expect."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.dc.bias import band_words
from checkers.judgement.dc.bias_case import DcBiasCase
from checkers.physics.core.button_under_bias import ButtonOperates, button_operates
from checkers.physics.core.injection import Injection
from checkers.physics.core.trip_band import TripBand

APART = (
    "Set the rig up in a dry place, apart from any installation in use, with a person licensed "
    "for electrical work beside it. Use a device that will never protect anything again."
)
SUPPLY = (
    "Leave the mains out where you can: a device that needs no supply voltage trips on AC of "
    "extra-low voltage from a safety isolating transformer, through one pole and a variable "
    "resistor. One that needs its supply, as those that sense DC do, gets it through an "
    "isolating transformer that feeds this rig alone. So does any device whose button is to be "
    "shown: its button works at the rated voltage only."
)
RESIDUAL = (
    "Make the residual AC so that it flows one way through the core: from the load side of one "
    "pole, through a variable resistor and a milliammeter, to the supply side of another pole. At "
    "extra-low voltage, send it through one pole alone. Nothing goes to earth; the secondary side "
    "of the isolating transformer stays unearthed."
)
WITHOUT_DC = (
    "Without DC: raise the AC slowly until the device opens, three times, and note the trip "
    "current. Press the test button, but only with the rated voltage between the poles: with less, "
    "or none, a sound button does nothing and proves nothing."
)
WITH_DC = (
    "Repeat the AC tests with the DC flowing, and the button where the rated voltage is there."
)
TURNED_ROUND = "Switch off, turn the DC round, and repeat: the two directions may differ."
AFTERWARDS = (
    "Switch the DC off and repeat the AC tests: the readings should be those of the start. Make "
    "everything dead, take the rig down, and mark the device: not for use."
)


def steps(injection: Injection) -> list[str]:
    """Return what to do, in order, on the bench."""
    return [
        APART,
        SUPPLY,
        RESIDUAL,
        _wire(injection),
        _source(injection),
        WITHOUT_DC,
        _switch_on(injection),
        WITH_DC,
        TURNED_ROUND,
        AFTERWARDS,
    ]


def _wire(injection: Injection) -> str:
    turns = injection.turns
    times = "once" if turns == 1 else f"{turns} times, always the same way"
    return (
        f"With everything dead, pass the DC wire through the core {times}: through the window "
        "of a sensor, or through poles in series that carry nothing else, one turn for each pole."
    )


def _source(injection: Injection) -> str:
    rating = injection.power_rating
    rated = "" if rating is None else f", rated {format_quantity(rating, 'W')} or more,"
    return (
        f"Put {format_quantity(injection.standard_value, 'ohm')}{rated} and a milliammeter in "
        f"series with it. Set the source to {format_quantity(injection.supply_voltage, 'V')} and "
        f"its current limit to about {format_quantity(injection.current_limit, 'mA', 2)}. "
        "Leave it off."
    )


def _switch_on(injection: Injection) -> str:
    return (
        f"Switch the DC on. The meter should read {format_quantity(injection.current, 'mA', 3)}, "
        f"which is {format_quantity(injection.dc_residual, 'mA', 3)} of residual DC in the core."
    )


def expected_readings(asked: DcBiasCase) -> list[dict[str, str]]:
    """Return a row for each test: what it should give without the DC and with it."""
    rated = asked.rated
    if not asked.modelled or not asked.type_known or rated is None:
        return []
    without, with_dc = asked.own, asked.trip
    return [
        {
            "test": "slowly rising AC",
            "without_dc": band_words(without),
            "with_dc": band_words(with_dc) if with_dc.high > 0.0 else "open before it starts",
        },
        {
            "test": f"AC of {format_quantity(rated, 'mA')}",
            "without_dc": _at(rated, without),
            "with_dc": _at(rated, with_dc),
        },
        {
            "test": "test button",
            "without_dc": _button(without, rated),
            "with_dc": _button(with_dc, rated),
            "holds": "at the rated voltage between the poles only",
        },
    ]


def _at(current: float, trip: TripBand) -> str:
    if trip.high <= current:
        return "opens"
    return "does not open" if trip.low > current else "may or may not open"


def _button(trip: TripBand, rated: float) -> str:
    if trip.high == 0.0:
        return "open before it is pressed"
    return {
        ButtonOperates.YES: "operates",
        ButtonOperates.NO: "does not operate",
        ButtonOperates.CANNOT_SAY: "may or may not operate",
    }[button_operates(trip, rated)]
