"""A finding from its code and its facts, with the words that the code has for them."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from checkers.domain.verdicts import Finding, Judges, Outcome
from checkers.wording.book import words_of

NO_FACTS: Mapping[str, object] = MappingProxyType({})


def finding(
    code: str,
    outcome: Outcome,
    judges: Judges,
    facts: Mapping[str, object] = NO_FACTS,
    **rest: Any,
) -> Finding:
    """Return the finding of a code.

    Inputs: the code, its outcome and what it speaks about; the facts that its words name; and
    further fields of a Finding. A field given counts before the words of the code.
    Raises KeyError for a code without words, or a fact that they name and that is not given.
    """
    words = words_of(code)
    worded = {
        "about": words.about.format_map(facts),
        "says": words.says.format_map(facts),
        "do_next": words.do_next.format_map(facts),
    }
    return Finding(code=code, outcome=outcome, judges=judges, **(worded | rest))


def reworded(
    found: Finding, code: str, facts: Mapping[str, object] = NO_FACTS, **changes: Any
) -> Finding:
    """Return a finding under another code, with its words; what it is about stays.

    Inputs: the finding, the code and the facts its words name; and fields that change with it.
    Raises KeyError as `finding` does.
    """
    words = words_of(code)
    worded = {"says": words.says.format_map(facts), "do_next": words.do_next.format_map(facts)}
    return dataclasses.replace(found, code=code, **(worded | changes))


def with_parts(found: Finding, *parts: str) -> Finding:
    """Return a finding that says something more; empty parts add nothing."""
    return dataclasses.replace(found, says=" ".join(one for one in (found.says, *parts) if one))
