"""Pictures on a page: `<!-- show picture NAME {what it is of} -->`."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping

from markupsafe import Markup

from build_tools.drawings.circuits.arrangement import arrangement
from build_tools.drawings.circuits.button_current import button_current
from build_tools.drawings.circuits.clamp_places import clamp_places
from build_tools.drawings.circuits.converter_circuit import converter_circuit
from build_tools.drawings.circuits.neutral_to_earth import neutral_to_earth
from build_tools.drawings.currents.core_view import core_view
from build_tools.drawings.currents.instrument_currents import instrument_currents
from build_tools.drawings.currents.leakage_sum import leakage_sum
from build_tools.drawings.currents.start_phases import start_phases
from build_tools.drawings.currents.waveform import waveform
from build_tools.drawings.limits.operating_bands import operating_bands
from build_tools.drawings.limits.reading_and_band import reading_and_band
from build_tools.drawings.limits.time_limits import time_limits
from build_tools.drawings.limits.trip_current_and_dc import trip_current_and_dc
from build_tools.drawings.svg import Picture
from build_tools.drawings.type_symbols import delay_marks, type_symbols
from build_tools.pages.rendering import html

PICTURES: Mapping[str, Callable[..., Picture]] = {
    "arrangement": arrangement,
    "button-current": button_current,
    "clamp-places": clamp_places,
    "converter-circuit": converter_circuit,
    "core-view": core_view,
    "delay-marks": delay_marks,
    "instrument-currents": instrument_currents,
    "leakage-sum": leakage_sum,
    "neutral-to-earth": neutral_to_earth,
    "operating-bands": operating_bands,
    "reading-and-band": reading_and_band,
    "start-phases": start_phases,
    "time-limits": time_limits,
    "trip-current-and-dc": trip_current_and_dc,
    "type-symbols": type_symbols,
    "waveform": waveform,
}


def picture_macro(words: str, root: str) -> str:
    """Show a picture: its name, and what it is of as JSON.

    Raises KeyError for a picture there is not, TypeError for what it does not take.
    """
    del root
    name, _, of = words.partition(" ")
    return picture_html(PICTURES[name](**(json.loads(of) if of.strip() else {})))


def picture_html(picture: Picture) -> str:
    """Return a picture with its caption and its sources."""
    return html("macros/picture.html", picture=picture, svg=Markup(picture.svg))  # noqa: S704  # every text in it is escaped
