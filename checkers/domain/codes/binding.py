"""Whose rule a cited document is: one that binds under a code, or one to compare with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from checkers.domain.codes.rules import Code
from checkers.domain.limits.tables import TABLES
from checkers.domain.sources.documents import SOURCES, Citation, Source

FOR_COMPARISON = "for comparison: it does not bind here"
INTERNATIONAL = frozenset({"IEC", "JCGM"})
BY_DESIGNATION: Mapping[str, Source] = {one.designation: one for one in SOURCES.values()}


def seen_from(code: Code, citation: Citation) -> Citation:
    """Return a citation as it stands under a code: marked where its document is no rule there."""
    source = BY_DESIGNATION.get(citation.document)
    if source is None or not _is_rule(source) or binds(code, source):
        return citation
    marked = "; ".join(part for part in (citation.clause, FOR_COMPARISON) if part)
    return replace(citation, clause=marked)


def binds(code: Code, source: Source) -> bool:
    """Tell whether a document is one that a code, or the one it follows, speaks by.

    Those are the documents its rules and tables cite, and all from the publishers of its own.
    """
    return source.key in _cited_by(code) or source.publisher in _publishers(code)


def _is_rule(source: Source) -> bool:
    """Tell whether a document says what must be done in installations of some country."""
    if source.kind == "guide":
        return source.publisher not in INTERNATIONAL
    return source.kind in {"installation-code", "statute"}


def _cited_by(code: Code) -> set[str]:
    rules = (*code.editions, *code.tests, *code.type_rules, *code.intervals)
    own = {*code.tables.values(), *(test.limits for test in code.tests if test.limits)}
    return {rule.document for rule in rules} | {TABLES[key].document for key in own}


def _publishers(code: Code) -> set[str]:
    own = (*code.editions, *(code.tests if code.follows else ()))
    return {SOURCES[one.document].publisher for one in own} - {"none"}
