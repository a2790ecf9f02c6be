"""The actual test currents: for each device type and rating, worked out from the limit tables."""

from __future__ import annotations

from collections.abc import Iterable

from build_tools.files.identity import day_of_sources
from build_tools.pages.rendering import html
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.domain.limits.words import WAVEFORMS, amount_in_words
from checkers.domain.quantities.ranges import range_in_words

RATINGS = (6.0, 10.0, 30.0, 100.0, 300.0, 500.0, 1000.0)
FORM = "rccb"  # RCBOs have the same times
LARGE = 5000.0  # from here on it is a short circuit, not a test with an instrument
DC_SHAPES = ("two-pulse", "three-pulse", "six-pulse")  # made in a laboratory, not on site


def currents_macro(words: str, root: str) -> str:
    """Show the currents that time a device: its type, then its delay (none or S)."""
    del root
    type_, delay = words.split()
    by_waveform: dict[str, list[dict[str, object]]] = {}
    for rated in RATINGS:
        for waveform, found in _by_waveform(_timing(type_, delay, rated)).items():
            by_waveform.setdefault(waveform, []).append(_line(rated, found))
    tables = [_table(waveform, lines) for waveform, lines in by_waveform.items()]
    return html("macros/test-currents.html", tables=tables, type=type_, delay=delay)


def bands_macro(type_: str, root: str) -> str:
    """Show between which currents a device of a type must operate on a slow rise."""
    del root
    lines = [
        {"waveform": waveform, "cells": _band_cells(type_, waveform)}
        for waveform in WAVEFORMS
        if _bands(type_, 30.0, waveform)
    ]
    used = _bands(type_, 30.0)
    return html(
        "macros/bands.html",
        lines=[{**line, "waveform": WAVEFORMS[str(line["waveform"])]} for line in lines],
        ratings=[amount_in_words(rated, "mA") for rated in RATINGS[1:]],
        sources=_sources(used),
        type=type_,
    )


def _bands(type_: str, rated: float, waveform: str | None = None) -> tuple[Row, ...]:
    return rows(
        "operating-current",
        on=day_of_sources(),
        form=FORM,
        type=type_,
        waveform=waveform,
        rated=rated,
    )


def _band_cells(type_: str, waveform: str) -> list[str]:
    cells = []
    for rated in RATINGS[1:]:
        ends = [(row.at_least(rated), row.at_most(rated)) for row in _bands(type_, rated, waveform)]
        cells.append("; ".join(_span(low, high) for low, high in ends) or "–")
    return cells


def _span(low: float | None, high: float | None) -> str:
    return range_in_words(low, high, "mA") or "?"


def _timing(type_: str, delay: str, rated: float) -> Iterable[Row]:
    for row in rows(
        "trip-time", on=day_of_sources(), form=FORM, type=type_, delay=delay, rated=rated
    ):
        level = row.level(rated)
        if level is not None and level < LARGE:
            yield row


def _by_waveform(found: Iterable[Row]) -> dict[str, list[Row]]:
    grouped: dict[str, list[Row]] = {}
    for row in found:
        for waveform in sorted(row.when.only("waveform") or ()):
            if waveform not in DC_SHAPES:
                grouped.setdefault(waveform, []).append(row)
    return grouped


def _line(rated: float, found: list[Row]) -> dict[str, object]:
    cells: dict[str, list[str]] = {}
    for row in found:
        cells.setdefault(_time(row), []).append(_current(row, rated))
    return {
        "rated": amount_in_words(rated, "mA"),
        "cells": {time: " or ".join(currents) for time, currents in cells.items()},
        "rows": found,
    }


def _time(row: Row) -> str:
    return range_in_words(row.at_least(), row.at_most(), "ms")


def _current(row: Row, rated: float) -> str:
    level = amount_in_words(row.level(rated) or 0.0, "mA")
    return f"{level} (×{row.when.multiple:g})" if row.when.multiple is not None else level


def _table(waveform: str, lines: list[dict[str, object]]) -> dict[str, object]:
    times = dict.fromkeys(time for line in lines for time in line["cells"])  # type: ignore[attr-defined]
    used = [row for line in lines for row in line["rows"]]  # type: ignore[attr-defined]
    return {
        "waveform": WAVEFORMS[waveform],
        "times": list(times),
        "lines": lines,
        "sources": _sources(used),
    }


def _sources(used: Iterable[Row]) -> list[str]:
    return list(dict.fromkeys(row.citation.words for row in used))
