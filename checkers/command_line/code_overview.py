"""All that is known of one code, as JSON values and as text: tests, types, tables, gaps."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from typing import Any

from checkers.domain.codes.registry import Code, CodeTest, Edition, Rule, TypeRule
from checkers.domain.codes.registry import Interval as TestInterval
from checkers.domain.limits.rows import Table
from checkers.domain.limits.tables import TABLES
from checkers.domain.limits.words import describe
from checkers.domain.quantities.quantity import format_number
from checkers.domain.sources.documents import SOURCES


def tables_of(code: Code) -> tuple[Table, ...]:
    """Return the code's own tables, and those of the product standards, which serve any code."""
    own = {*code.tables.values(), *(test.limits for test in code.tests if test.limits)}
    return tuple(
        table
        for key, table in TABLES.items()
        if key in own or (SOURCES[table.document].kind == "product-standard" and table.assumed)
    )


def code_as_values(code: Code) -> dict[str, Any]:
    """Return a code with its tests, rules and tables as JSON values."""
    return {
        "code": code.key,
        "name": code.name,
        "country": code.country,
        "editions": [{"name": _edition_words(one), **_rule(one)} for one in code.editions],
        "tests": [{"says": _test_words(one), **_rule(one)} for one in code.tests],
        "types": [{"says": one.says, **_rule(one)} for one in code.type_rules],
        "intervals": [{"says": _interval_words(one), **_rule(one)} for one in code.intervals],
        "tables": [_table(one) for one in tables_of(code)],
        "not_known": list(code.not_known),
        "local_note": code.local_note,
    }


def _rule(rule: Rule) -> dict[str, Any]:
    cited = rule.citation
    return {
        "from": rule.from_day.isoformat() if rule.from_day else None,
        "until": rule.until_day.isoformat() if rule.until_day else None,
        "note": rule.note,
        "source": {
            "document": cited.document,
            "edition": cited.edition,
            "clause": cited.clause,
            "evidence": cited.evidence,
        },
    }


def _table(table: Table) -> dict[str, Any]:
    return {
        "key": table.key,
        "title": table.title,
        "note": table.note,
        "rows": [describe(row) for row in table.rows],
    }


def _edition_words(edition: Edition) -> str:
    return f"{edition.citation.document}, {edition.edition}"


def _test_words(test: CodeTest) -> str:
    multiple = "" if test.multiple is None else f" at ×{format_number(test.multiple)}"
    shape = f", {test.waveform}" if test.waveform else ""
    return f"{test.test}{multiple}{shape}: {test.standing.replace('-', ' ')} ({test.purpose})"


def _interval_words(interval: TestInterval) -> str:
    return f"{interval.test}, {interval.place}, {interval.device} devices: every {interval.every}"


def code_as_text(code: Code, width: int) -> str:
    """Return a code with its tests, rules and tables as text of a given width [columns]."""
    lines = [code.name, ""]
    lines += _rules("Editions", ((_edition_words(one), one) for one in code.editions), width)
    lines += _rules("Tests", ((_test_words(one), one) for one in code.tests), width)
    lines += _rules("Device types", _type_words(code.type_rules), width)
    lines += _rules("Intervals", ((_interval_words(one), one) for one in code.intervals), width)
    for table in tables_of(code):
        lines += _table_text(table, width)
    lines += ["Not known", *_bullets(code.not_known, width), ""]
    lines += textwrap.wrap(code.local_note, width)
    return "\n".join(lines) + "\n"


def _type_words(rules: Iterable[TypeRule]) -> Iterable[tuple[str, Rule]]:
    return ((one.says, one) for one in rules)


def _rules(title: str, rules: Iterable[tuple[str, Rule]], width: int) -> list[str]:
    texts = [f"{words}{_days(rule)} — {rule.citation.words}" for words, rule in rules]
    return [title, *_bullets(texts or ("none known here",), width), ""]


def _days(rule: Rule) -> str:
    start = f", from {rule.from_day.isoformat()}" if rule.from_day else ""
    end = f", until {rule.until_day.isoformat()}" if rule.until_day else ""
    return start + end


def _table_text(table: Table, width: int) -> list[str]:
    rows = (describe(row) for row in table.rows)
    texts = [
        f"{'; '.join(part for part in (row['device'], row['test']) if part)}: {row['limit']}"
        f"{', ' + row['days'] if row['days'] else ''} — {row['clause']} ({row['evidence']})"
        for row in rows
    ]
    head = textwrap.wrap(f"{table.title} [{table.document} {table.edition}]", width)
    return [*head, *_bullets(texts, width), ""]


def _bullets(texts: Iterable[str], width: int) -> list[str]:
    return [
        line
        for text in texts
        for line in textwrap.wrap(
            text, width, initial_indent="- ", subsequent_indent="  ", break_on_hyphens=False
        )
    ]
