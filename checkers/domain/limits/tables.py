"""The limit tables, and the rows that answer a question on a day."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from functools import lru_cache
from types import MappingProxyType
from typing import Any

from checkers.domain.limits.conditions import Situation
from checkers.domain.limits.loading import load_tables
from checkers.domain.limits.rows import Row, Table
from checkers.domain.sources.documents import PRODUCT_STANDARD, SOURCES
from checkers.domain.tables.data_files import data_folder

TABLES: Mapping[str, Table] = MappingProxyType(load_tables(data_folder() / "limits"))


@lru_cache(maxsize=4096)
def rows(measures: str, *, on: date, made_to: str | None = None, **asked: Any) -> tuple[Row, ...]:
    """Return the rows of product standards that apply to a device and a test.

    Inputs: measures, a key of MEASURES; on, the day of the reading; made_to, the key of the
    document the device is made to, if known (without it, only tables of documents that are
    assumed of an unmarked device count); and any field of Situation by its name: form, type,
    delay, set_delay [ms], rated [mA], waveform, multiple, current [mA], dc_residual [mA] ...
    What is left out, or None, is not filtered by. Rows come lowest test current first.
    """
    situation = Situation(**asked)
    found = [
        row
        for table in TABLES.values()
        if table.measures == measures and _concerns(table, made_to)
        for row in table.rows
        if row.answers(situation, on)
    ]
    return tuple(sorted(found, key=lambda row: row.level(situation.rated) or 0.0))


@lru_cache(maxsize=4096)
def rows_in(table: str, *, on: date, **asked: Any) -> tuple[Row, ...]:
    """Return the rows of one table, of whatever document, that apply on a day.

    Inputs: table, a key of TABLES; the rest as for `rows`. Raises KeyError for an unknown table.
    """
    situation = Situation(**asked)
    found = (row for row in TABLES[table].rows if row.answers(situation, on))
    return tuple(sorted(found, key=lambda row: row.level(situation.rated) or 0.0))


def _concerns(table: Table, made_to: str | None) -> bool:
    """Tell whether a product-standard table concerns a device made to a document, or unmarked."""
    if SOURCES[table.document].kind != PRODUCT_STANDARD:
        return False
    if made_to is None:
        return table.assumed
    return table.document in (made_to, *SOURCES[made_to].builds_on)
