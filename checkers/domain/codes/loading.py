"""Read the codes strictly, one file a jurisdiction."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from checkers.domain.codes.checks import refuse_clashes
from checkers.domain.codes.rules import PURPOSES, Code, CodeTest, Edition, Interval, TypeRule
from checkers.domain.device.supply import Supply
from checkers.domain.limits.conditions import CHOICES
from checkers.domain.limits.rows import Table
from checkers.domain.sources.documents import EVIDENCE_WORDS, SOURCES
from checkers.domain.tables.data_files import DataPath, read_toml
from checkers.domain.tables.records import Record

_TESTS = frozenset({"trip-time", "no-trip", "ramp", "button"})
_STANDINGS = frozenset({"required", "advised", "possible", "not-required"})
_TYPE_STANDINGS = frozenset({"not-accepted", "only-where", "needed", "other-means"})
_PHASES = frozenset({"0", "180", "+", "-"})
_DEVICES = frozenset({"fixed", "portable", "any"})
_PURPOSES_OF_TEST = frozenset({"verification", "in-service", "fault-finding"})
_NONE: frozenset[str] = frozenset()


def load_codes(folder: DataPath, tables: Mapping[str, Table]) -> dict[str, Code]:
    """Return every code in a folder, by key, each with what it takes from the one it follows.

    The international one comes first, the others by country.
    Raises DataError, naming file and row, for anything that is not as the codes should be.
    """
    codes = [_code(file, tables) for file in folder.iterdir() if file.name.endswith(".toml")]
    codes.sort(key=lambda code: (code.country != "International", code.country))
    by_key = {code.key: code for code in codes}
    return {key: _with_followed(code, by_key) for key, code in by_key.items()}


def _with_followed(code: Code, codes: Mapping[str, Code]) -> Code:
    """Return a code with the tests, tables and type rules it takes from another."""
    if not code.follows:
        return code
    followed = codes.get(code.follows)
    if followed is None or followed.follows:
        raise Record(f"codes/{code.key}.toml", "", {}).error(
            f"follows {code.follows!r}, which is no code that stands by itself"
        )
    return replace(
        code,
        tables={**followed.tables, **code.tables},
        tests=code.tests or followed.tests,
        type_rules=code.type_rules + followed.type_rules,
    )


def _code(path: DataPath, tables: Mapping[str, Table]) -> Code:
    """Return the code in one file, as the file has it."""
    key = path.name.removesuffix(".toml")
    name = f"codes/{path.name}"
    record = Record(name, "", read_toml(path, name))
    code = Code(
        key=key,
        name=record.text("name"),
        country=record.text("country"),
        follows=record.text("follows", default=""),
        month_first=record.flag("month_first", default=False),
        tables=_tables(record.record("tables"), tables),
        editions=tuple(map(_edition, record.records("edition"))),
        tests=tuple(_test(one, tables) for one in record.records("test")),
        type_rules=tuple(map(_type_rule, record.records("type_rule"))),
        intervals=tuple(map(_interval, record.records("interval"))),
        not_known=record.texts("not_known"),
        local_note=record.text("local_note"),
    )
    record.finish()
    if not code.editions:
        raise record.error("has no [[edition]]")
    if not (code.tests or code.not_known):
        raise record.error("has no [[test]] and does not say in not_known what is missing")
    refuse_clashes(name, code)
    return code


def _tables(record: Record | None, tables: Mapping[str, Table]) -> dict[str, str]:
    """Return the limit table named for each purpose."""
    if record is None:
        return {}
    named = {purpose: record.text(purpose, default="") for purpose in PURPOSES}
    record.finish()
    for purpose, table in named.items():
        if table and (table not in tables or tables[table].measures != purpose):
            raise record.error(f"{table!r} is no table of {purpose}")
    return {purpose: table for purpose, table in named.items() if table}


def _rule(record: Record) -> dict[str, Any]:
    """Return the fields that every rule has."""
    start, end = record.days()
    return {
        "document": record.choice("document", frozenset(SOURCES)),
        "edition": record.text("edition"),
        "clause": record.text("clause", default=""),
        "evidence": record.choice("evidence", EVIDENCE_WORDS),
        "from_day": start,
        "until_day": end,
        "note": record.text("note", default=""),
    }


def _edition(record: Record) -> Edition:
    """Return one edition of a document of the code."""
    edition = Edition(**_rule(record))
    record.finish()
    return edition


def _test(record: Record, tables: Mapping[str, Table]) -> CodeTest:
    """Return one test of the code."""
    phases = record.texts("phases")
    test = CodeTest(
        **_rule(record),
        test=record.choice("test", _TESTS),
        standing=record.choice("standing", _STANDINGS),
        multiple=record.number("multiple"),
        waveform=record.choice("waveform", CHOICES["waveform"], default=""),
        phases=phases,
        lasting=record.amount("lasting", "time"),
        limits=record.text("limits", default=""),
        types=record.choices("types", CHOICES["type"]) or _NONE,
        forms=record.choices("forms", CHOICES["form"]) or _NONE,
        delays=record.choices("delays", CHOICES["delay"]) or _NONE,
        rated_up_to=record.amount("rated_up_to", "current"),
        purpose=record.choice("purpose", _PURPOSES_OF_TEST),
        served_by=record.choices("served_by", _TESTS) or _NONE,
    )
    record.finish()
    if set(phases) - _PHASES:
        raise record.error(f"'phases' holds {phases}, not among {sorted(_PHASES)}")
    if test.limits and test.limits not in tables:
        raise record.error(f"{test.limits!r} is no limit table")
    if test.test in ("trip-time", "no-trip") and test.multiple is None:
        raise record.error("a timed test needs the multiple it is made at")
    return test


def _type_rule(record: Record) -> TypeRule:
    """Return one rule on device types."""
    rule = TypeRule(
        **_rule(record),
        types=record.choices("types", CHOICES["type"]) or _NONE,
        standing=record.choice("standing", _TYPE_STANDINGS),
        loads=frozenset(record.texts("loads")),
        supplies=record.choices("supplies", frozenset(Supply)) or _NONE,
        where=record.text("where", default=""),
        also=record.choices("also", CHOICES["type"]) or _NONE,
        also_where=record.text("also_where", default=""),
        says=record.text("says"),
        with_detection=record.flag("with_detection", default=False),
        also_by_upstream=record.flag("also_by_upstream", default=False),
    )
    record.finish()
    if not rule.types:
        raise record.error("names no types")
    if rule.standing in {"only-where", "other-means"} and not rule.where:
        raise record.error(f"{rule.standing} needs where")
    if bool(rule.also) != bool(rule.also_where):
        raise record.error("also and also_where belong together")
    return rule


def _interval(record: Record) -> Interval:
    """Return one test interval."""
    interval = Interval(
        **_rule(record),
        test=record.choice("test", _TESTS),
        place=record.text("place"),
        device=record.choice("device", _DEVICES),
        every=record.text("every"),
    )
    record.finish()
    return interval
