"""The interrupter that some equipment has of its own under a code, and the currents it trips at."""

from __future__ import annotations

from datetime import date
from functools import lru_cache

from checkers.domain.codes.registry import Code
from checkers.domain.limits.rows import Row, Table
from checkers.domain.limits.tables import TABLES
from checkers.domain.limits.words import describe
from checkers.judgement.equipment.equipment import Equipment
from checkers.judgement.equipment.type_rules import other_means
from checkers.wording.book import part


@lru_cache(maxsize=1024)
def interrupter_on_dc(equipment: Equipment, code: Code, day: date) -> tuple[float, Row] | None:
    """Return the smooth DC [mA] at which its own interrupter opens at the latest, and its row.

    None where the code protects it by a device type. Assumption: of two classes, the one that
    lets more pass.
    """
    tables = _tables(equipment, code, day)
    found = [
        (most, row)
        for table in tables
        for row in table.rows
        if "smooth-dc" in (row.when.only("waveform") or ()) and (most := row.at_most()) is not None
    ]
    return max(found, key=lambda one: one[0], default=None)


def interrupter_in_words(equipment: Equipment, code: Code, day: date) -> list[str]:
    """Return at which currents its own interrupter trips, a line for each class and waveform."""
    tables = _tables(equipment, code, day)
    return [line for table in tables for line in _lines(table)]


def _lines(table: Table) -> list[str]:
    return [
        f"{_class(row)}, {describe(row)['test']}: {describe(row)['limit']}" for row in table.rows
    ]


def _class(row: Row) -> str:
    return part("equipment.or").join(sorted(row.when.only("option") or ())).replace("-", " ")


def _tables(equipment: Equipment, code: Code, day: date) -> list[Table]:
    rule = other_means(code, equipment, day)
    if rule is None:
        return []
    return [
        one
        for one in TABLES.values()
        if one.document == rule.document and one.measures == "operating-current"
    ]
