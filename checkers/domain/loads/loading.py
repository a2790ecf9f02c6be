"""Read the catalogue of connected equipment strictly."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product
from math import inf
from types import MappingProxyType
from typing import Any

from checkers.domain.device.supply import Supply
from checkers.domain.limits.conditions import CHOICES
from checkers.domain.loads.kinds import (
    Also,
    Load,
    LoadFigure,
    LoadRule,
    MetBy,
    Need,
    Separation,
    Trap,
)
from checkers.domain.sources.cautions import HAZARDS
from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.domain.tables.records import Record

FAULT_LOOP = "fault-loop"
FIGURES = frozenset({"leakage", "smooth-dc"})
SUPPLIES, SEPARATIONS, MET_BY = frozenset(Supply), frozenset(Separation), frozenset(MetBy)
_NONE: frozenset[str] = frozenset()

Sources = Mapping[str, Citation]


def load_equipment(raw: dict[str, Any], file: str) -> dict[str, Load]:
    """Return every kind of equipment of a parsed file, by key.

    Raises DataError, naming file and row, where an entry is not whole, cites a source that is
    not there, or leaves a supply and separation without a need.
    """
    top = Record(file, "", raw)
    sources = {key: _source(one) for key, one in top.tables("source").items()}
    listed = {key: Record(file, key, one.values) for key, one in top.tables("load").items()}
    loads = {key: _load(one, key, sources) for key, one in listed.items()}
    top.finish()
    return loads


def _source(record: Record) -> Citation:
    cited = cite(
        record.choice("document", frozenset(SOURCES)),
        record.text("clause"),
        record.choice("evidence", EVIDENCE_WORDS),
        record.text("edition"),
    )
    record.finish()
    return cited


def _load(record: Record, key: str, sources: Sources) -> Load:
    load = Load(
        key=key,
        name=record.text("name"),
        what=record.text("what"),
        words=record.texts("words"),
        waveform=record.text("waveform"),
        circuits=MappingProxyType(_circuits(record)),
        contains_converter=record.flag("contains_converter", default=True),
        detects=record.flag("detects", default=False),
        two_way=record.flag("two_way", default=False),
        two_way_note=record.text("two_way_note", default=""),
        island=record.text("island", default=""),
        maker_declares=record.texts("maker_declares"),
        with_type_ac=record.text("with_type_ac"),
        hazards=record.choices("hazards", HAZARDS) or _NONE,
        needs=tuple(_need(one, sources) for one in _rows(record, "need")),
        figures=tuple(_figure(one, sources) for one in _rows(record, "figure")),
        rules=tuple(_rule(one, sources) for one in _rows(record, "rule")),
        traps=tuple(_trap(one, sources) for one in _rows(record, "trap")),
    )
    record.finish()
    _refuse_gaps(record, load)
    if load.two_way != bool(load.two_way_note):
        raise record.error("two_way and two_way_note belong together")
    if load.figure("leakage") is None or not load.words:
        raise record.error("needs words to search by and a figure of leakage")
    if not load.traps:
        raise record.error("needs a trap: what catches people on site with it")
    return load


def _rows(record: Record, key: str) -> list[Record]:
    """Return the rows of an array of tables, each named by its load, key and place."""
    rows = list(record.records(key))
    for row in rows:
        row.row = f"{record.row}, {row.row}"
    return rows


def _circuits(record: Record) -> dict[str, tuple[str, ...]]:
    inner = record.record("circuits")
    if inner is None:
        raise record.error("needs its circuits by supply")
    order = list(inner.values)
    found = {supply: inner.texts(supply) for supply in Supply}
    inner.finish()
    circuits = {str(supply): keys for supply, keys in found.items() if supply in inner.values}
    if not circuits:
        raise record.error("needs its circuits by supply")
    return {supply: circuits[supply] for supply in order}


def _need(record: Record, sources: Sources) -> Need:
    smooth, source = _smooth_dc(record, "smooth_dc", None), record.text("smooth_dc_source")
    need = Need(
        supplies=record.choices("supply", SUPPLIES) or _NONE,
        separations=record.choices("separation", SEPARATIONS) or _NONE,
        type=record.choice("type", CHOICES["type"]),
        also=tuple(_also(one) for one in _rows(record, "also")),
        smooth_dc=smooth,
        smooth_dc_source=_cited(record, source, sources),
        smooth_dc_met=_smooth_dc(record, "smooth_dc_met", smooth),
        smooth_dc_met_source=_cited(record, record.text("smooth_dc_met_source", source), sources),
        says=record.text("says"),
        sources=_all_cited(record, sources),
    )
    record.finish()
    return need


def _also(record: Record) -> Also:
    types = record.choices("types", CHOICES["type"])
    also = Also(
        types=tuple(record.texts("types")),
        where=record.text("where"),
        when=record.choice("when", MET_BY),
        besides=record.text("besides", default=""),
    )
    record.finish()
    if types is None:
        raise record.error("names no types")
    return also


def _smooth_dc(record: Record, key: str, default: float | None) -> float:
    """Return an amount of smooth DC [mA]; infinite where only the fault loop limits it."""
    if record.values.get(key) == FAULT_LOOP:
        record.taken.add(key)
        return inf
    value = record.amount(key, "current")
    if value is None and default is None:
        raise record.error(f"needs {key!r}: a current, or {FAULT_LOOP}")
    return default if value is None else value  # type: ignore[return-value]  # refused above


def _figure(record: Record, sources: Sources) -> LoadFigure:
    source = record.text("source")
    figure = LoadFigure(
        about=record.choice("about", FIGURES),
        typical=record.amount("typical", "current"),
        at_most=record.amount("at_most", "current"),
        says=record.text("says"),
        source=_cited(record, source, sources),
        typical_source=_cited(record, record.text("typical_source", source), sources),
    )
    record.finish()
    if figure.typical is None and figure.at_most is None:
        raise record.error("needs typical or at_most")
    if figure.typical is not None and figure.typical > (figure.at_most or inf):
        raise record.error("typical is above at_most")
    return figure


def _rule(record: Record, sources: Sources) -> LoadRule:
    rule = LoadRule(
        codes=frozenset(record.texts("codes")),
        rated_at_most=record.amount("rated_at_most", "current"),
        only_for=record.text("only_for", default=""),
        own_device=record.flag("own_device", default=False),
        says=record.text("says"),
        unasked=record.text("unasked", default=""),
        source=_cited(record, record.text("source"), sources),
    )
    record.finish()
    if (rule.rated_at_most or rule.own_device) and not rule.codes:
        raise record.error("is judged, so it needs the codes it is judged under")
    return rule


def _trap(record: Record, sources: Sources) -> Trap:
    trap = Trap(says=record.text("says"), sources=_all_cited(record, sources))
    record.finish()
    return trap


def _all_cited(record: Record, sources: Sources) -> tuple[Citation, ...]:
    """Return every source that a row cites; one at least."""
    cited = tuple(_cited(record, key, sources) for key in record.texts("source"))
    if not cited:
        raise record.error("cites no source")
    return cited


def _cited(record: Record, key: str, sources: Sources) -> Citation:
    if key not in sources:
        raise record.error(f"cites {key!r}, which is no source of this file")
    return sources[key]


def _refuse_gaps(record: Record, load: Load) -> None:
    """Refuse a supply and separation without a need, and a need that no circuit can have."""
    for supply, separation in product(load.circuits, Separation):
        if not any(need.holds(supply, separation) for need in load.needs):
            raise record.error(f"has no need for {supply} with separation {separation}")
    unused = {supply for need in load.needs for supply in need.supplies} - set(load.circuits)
    if unused:
        raise record.error(f"has a need for {', '.join(sorted(unused))} but no circuits for it")
