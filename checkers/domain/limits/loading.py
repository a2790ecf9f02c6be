"""Read limit tables strictly, and refuse those with gaps or overlaps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from checkers.domain.limits.checks import refuse_gaps_and_overlaps
from checkers.domain.limits.conditions import joined, read_conditions, read_interval
from checkers.domain.limits.rows import MEASURES, Formula, LimitEnd, Row, Table
from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES
from checkers.domain.tables.data_files import DataPath, read_toml
from checkers.domain.tables.records import Record

_KINDS = {"ms": "time", "mA": "current", "V": "voltage", "share": "percentage"}


def load_tables(folder: DataPath) -> dict[str, Table]:
    """Return every table below a folder laid out as <document>/<table>.toml, by key.

    Raises DataError, naming file and row, for anything that is not as the tables should be.
    """
    tables = {}
    for document in sorted(folder.iterdir(), key=lambda one: one.name):
        if document.is_dir() and not document.name.startswith(("_", ".")):
            for file in sorted(document.iterdir(), key=lambda one: one.name):
                if file.name.endswith(".toml"):
                    table = load_table(file, document.name)
                    tables[table.key] = table
    return tables


def load_table(path: DataPath, document: str) -> Table:
    """Return the table in one file of a document's folder."""
    key = f"{document}/{path.name.removesuffix('.toml')}"
    name = f"limits/{key}.toml"
    record = Record(name, "", read_toml(path, name))
    if record.choice("document", frozenset(SOURCES)) != document:
        raise record.error(f"stands in the folder of {document!r} but names another document")
    conditions = read_conditions(record.record("applies"))
    measures = record.choice("measures", frozenset(MEASURES))
    head = Table(
        key=key,
        title=record.text("title"),
        document=document,
        edition=record.text("edition"),
        clause=record.text("clause"),
        measures=measures,
        applies=conditions,
        assumed=record.flag("assumed"),
        note=record.text("note", default=""),
        rows=(),
    )
    rows = tuple(_rows(record, head))
    record.finish()
    if not rows:
        raise record.error("has no [[row]]")
    refuse_gaps_and_overlaps(name, rows)
    return replace(head, rows=rows)


def _rows(record: Record, table: Table) -> Iterator[Row]:
    """Yield the rows of a table."""
    for number, one in enumerate(record.records("row"), start=1):
        yield _row(one, table, number)


def _row(record: Record, table: Table, number: int) -> Row:
    """Return one row, with what it does not say itself taken from its table."""
    start, end = record.days()
    when = joined(record, table.applies, read_conditions(record.record("when")))
    row = Row(
        table=table.key,
        number=number,
        measures=table.measures,
        when=when,
        most=_bound(record, "at_most", table.measures),
        least=_bound(record, "at_least", table.measures),
        formula=_formula(record),
        never=record.flag("never", default=False),
        undeclared=record.flag("undeclared", default=False),
        document=table.document,
        edition=record.text("edition", default=table.edition),
        clause=record.text("clause", default=table.clause),
        evidence=record.choice("evidence", EVIDENCE_WORDS),
        from_day=start,
        until_day=end,
        note=record.text("note", default=""),
    )
    record.finish()
    _refuse_senseless(record, row)
    return row


def _bound(record: Record, end: str, measures: str) -> LimitEnd:
    """Return one end of a limit: `at_most` or `at_least` and its shares."""
    unit = MEASURES[measures]
    fixed = _figure(record, end, unit)
    added = _figure(record, f"{end}_added", unit) if unit == "mA" else None
    of_rated = record.number(f"{end}_of_rated") if unit == "mA" else None
    of_delay = record.number(f"{end}_of_delay") if unit == "ms" else None
    if added is not None and of_rated is None:
        raise record.error(f"{end}_added needs {end}_of_rated beside it")
    if fixed is not None and of_rated is not None:
        raise record.error(f"gives both {end} and {end}_of_rated")
    return LimitEnd(added if fixed is None else fixed, of_rated, of_delay)


def _figure(record: Record, key: str, unit: str) -> float | None:
    """Return a figure in the unit of its table, or None if absent."""
    if unit == "ratio":
        return record.number(key)
    figure = record.amount(key, _KINDS[unit])
    return figure / 100 if unit == "share" and figure is not None else figure


def _formula(record: Record) -> tuple[Formula, ...]:
    """Return the time formula of a row, piece by piece; empty where it has none."""
    return tuple(_piece(one) for one in record.records("at_most_formula"))


def _piece(record: Record) -> Formula:
    """Return one piece of a formula: a power of the current over a range of currents."""
    numerator, exponent = record.amount("numerator", "current"), record.number("exponent")
    over = record.record("over")
    record.finish()
    if not numerator or not exponent or over is None:
        raise record.error("needs numerator, exponent and over")
    return Formula(numerator, exponent, read_interval(over, "current"))


def _refuse_senseless(record: Record, row: Row) -> None:
    """Refuse a row that limits nothing, or limits twice, or whose limits cross."""
    said = [bool(row.most or row.least), bool(row.formula), row.never, row.undeclared]
    if sum(said) != 1:
        raise record.error("needs one kind of limit: figures, a formula, never or undeclared")
    if row.formula and row.unit != "ms":
        raise record.error("a formula limits a time, and this table does not")
    if row.never and row.measures != "no-trip-time":
        raise record.error("never belongs to a table of no-trip-time")
    if _crossed(row):
        raise record.error("its lower limit is above its upper limit")
    _refuse_missing_current(record, row)


def _crossed(row: Row) -> bool:
    """Tell whether the lower limit is above the upper, at any rating a device may have."""
    for rated in (6.0, 30.0, 500.0):
        lower, upper = row.at_least(rated, 60.0), row.at_most(rated, 60.0)
        if lower is not None and upper is not None and lower > upper:
            return True
    return False


def _refuse_missing_current(record: Record, row: Row) -> None:
    """Refuse a time with no test current, and a band with one."""
    has_current = row.when.multiple is not None or row.when.current is not None
    needs_current = row.measures in ("trip-time", "no-trip-time") and not row.formula
    if needs_current and not has_current:
        raise record.error("a time needs the multiple or current it holds at")
    if has_current and not row.measures.endswith("trip-time"):
        raise record.error(f"a test current means nothing to {row.measures}")
