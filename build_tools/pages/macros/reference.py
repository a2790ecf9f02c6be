"""Lists of the reference that come from data: causes, surveys, quantities, electrodes, circuits."""

from __future__ import annotations

from markupsafe import Markup

from build_tools.drawings.circuits.converter_circuit import converter_circuit
from build_tools.drawings.currents.waveform import waveform
from build_tools.files.identity import day_of_sources
from build_tools.pages.macros.checkers import fragment
from build_tools.pages.macros.currents import RATINGS
from build_tools.pages.macros.pictures import picture_html
from build_tools.pages.rendering import html
from checkers.domain.causes import CAUSES
from checkers.domain.limits.tables import rows_in
from checkers.domain.limits.words import amount_in_words
from checkers.domain.quantities.quantity import format_number
from checkers.domain.tables.glossary import QUANTITIES
from checkers.judgement.limits.safe_rounding import rounded_down
from checkers.judgement.schedule.rows.surveys import SURVEYS
from checkers.physics.converter.circuits import CIRCUITS

TOUCH = "iec-60364-4-41/touch-voltages"
SPECIAL = 0.5  # of the AC limit: what some codes ask of special locations


def causes_macro(_: str, root: str) -> str:
    """Show every cause that the explanations weigh: what it means, what to do, what it rests on."""
    del root
    return html("macros/causes.html", causes=[one for one in CAUSES.values() if one.prior])


def surveys_macro(_: str, root: str) -> str:
    """Show the published surveys of devices in service."""
    del root
    return html("macros/surveys.html", surveys=SURVEYS)


def quantities_macro(_: str, root: str) -> str:
    """Show every quantity that is asked for: its name, symbol, unit, meaning and range."""
    del root
    listed = sorted(QUANTITIES.values(), key=lambda one: one.name.lower())
    return html("macros/quantities.html", quantities=listed)


def electrode_limits_macro(_: str, root: str) -> str:
    """Show the greatest electrode resistance for each rating: touch voltage over rating."""
    on = day_of_sources()
    ac, dc = (rows_in(TOUCH, on=on, supply=supply)[0] for supply in ("ac", "dc"))
    volts = {"AC": ac.at_most() or 0.0, "25": SPECIAL * (ac.at_most() or 0.0), "DC": dc.at_most()}
    lines = [
        {
            "rated": amount_in_words(rated, "mA"),
            "cells": [_greatest(volt, rated) for volt in volts.values() if volt],
        }
        for rated in RATINGS[1:]
    ]
    headings = [f"{amount_in_words(volt, 'V')} {name}" for name, volt in _named(volts)]
    sources = [row.citation.words for row in (ac, dc)]
    return html(
        "macros/electrode-limits.html", lines=lines, headings=headings, sources=sources, root=root
    )


def _named(volts: dict[str, float | None]) -> list[tuple[str, float]]:
    words = {"AC": "AC", "25": "AC, special", "DC": "DC"}
    return [(words[key], volt) for key, volt in volts.items() if volt]


def _greatest(volts: float, rated: float) -> str:
    return format_number(rounded_down(1000.0 * volts / rated), 5)


def circuits_macro(_: str, root: str) -> str:
    """Show every converter circuit with the current of an earth fault in it."""
    circuits = [
        {
            "circuit": circuit,
            "pictures": Markup("").join(
                Markup(picture_html(draw(key)))  # noqa: S704  # a template has escaped it
                for draw in (converter_circuit, waveform)
            ),
            "leads": f"{root}checkers/fault-waveform/#{fragment({'circuit': key})}",
        }
        for key, circuit in CIRCUITS.items()
    ]
    return html("macros/circuits.html", circuits=circuits)
