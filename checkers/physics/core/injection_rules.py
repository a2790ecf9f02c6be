"""What limits a set-up that injects DC, read strictly from data/injection.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES, Citation, cite
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record, amount

FILE = "injection.toml"


@dataclass(frozen=True, slots=True)
class SetUpLimit:
    """One figure [V, ohm, W, or a bare factor], where it stands, and what it is for."""

    value: float
    citation: Citation
    note: str


@dataclass(frozen=True, slots=True)
class InjectionRules:
    """Everything injection.toml says; the tolerance is a share."""

    supply: SetUpLimit
    current_limit: SetUpLimit
    resistance: SetUpLimit
    loading: SetUpLimit
    heat: SetUpLimit
    margin: SetUpLimit
    power_ratings: tuple[float, ...]
    preferred_values: tuple[float, ...]
    tolerance: float
    preferred_citation: Citation


def load_injection_rules(text: Mapping[str, Any], file: str) -> InjectionRules:
    """Return the parsed file; raises DataError where something is missing or unknown."""
    top = Record(file, "", dict(text))
    values, tolerance, citation = _preferred(top)
    rules = InjectionRules(
        supply=_rule(top, "supply", "most", "voltage"),
        current_limit=_rule(top, "current_limit", "factor"),
        resistance=_rule(top, "resistance", "least", "resistance"),
        loading=_rule(top, "loading", "least", "resistance"),
        heat=_rule(top, "heat", "most", "power"),
        margin=_rule(top, "margin", "factor"),
        power_ratings=_power_ratings(top),
        preferred_values=values,
        tolerance=tolerance,
        preferred_citation=citation,
    )
    top.finish()
    return rules


def _table(top: Record, key: str) -> Record:
    found = top.record(key)
    if found is None:
        raise top.error(f"needs a table [{key}]")
    return found


def _rule(top: Record, key: str, figure: str, kind: str = "") -> SetUpLimit:
    record = _table(top, key)
    value = record.amount(figure, kind) if kind else record.number(figure)
    if not value:
        raise record.error(f"needs {figure!r} above zero")
    rule = SetUpLimit(value, _citation(record), record.text("note"))
    record.finish()
    return rule


def _power_ratings(top: Record) -> tuple[float, ...]:
    record = _table(top, "power_ratings")
    try:
        ratings = tuple(amount(one, "power") for one in record.texts("values"))
    except ValueError as problem:
        raise record.error(f"'values': {problem}") from None
    _refuse_disorder(record, ratings)
    _citation(record)
    record.text("note")
    record.finish()
    return ratings


def _preferred(top: Record) -> tuple[tuple[float, ...], float, Citation]:
    record = _table(top, "preferred_values")
    raw = record.value("values")
    if not isinstance(raw, list) or not all(isinstance(one, int) for one in raw):
        raise record.error("needs 'values' as a list of whole numbers")
    values = tuple(float(one) for one in raw)
    _refuse_disorder(record, values)
    tolerance = record.amount("tolerance", "percentage")
    if not tolerance:
        raise record.error("needs 'tolerance' above zero")
    citation = _citation(record)
    record.text("note")
    record.finish()
    return values, tolerance / 100.0, citation


def _refuse_disorder(record: Record, values: tuple[float, ...]) -> None:
    if not values or any(one >= after for one, after in pairwise(values)):
        raise record.error("'values' should rise from each to the next")


def _citation(record: Record) -> Citation:
    document = record.choice("document", frozenset(SOURCES))
    evidence = record.choice("evidence", EVIDENCE_WORDS)
    return cite(document, record.text("clause", ""), evidence)


INJECTION = load_injection_rules(read_toml(data_folder() / FILE, FILE), FILE)
