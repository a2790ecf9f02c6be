"""A checker: one question, its typed inputs, and the function that answers it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from checkers.domain.verdicts import Outcome, Result


@dataclass(frozen=True, slots=True)
class Example:
    """A request that shows what a checker does, with the outcome it must have."""

    title: str
    request: Mapping[str, Any]
    outcome: Outcome


@dataclass(frozen=True, slots=True)
class Checker:
    """Everything the command line, the forms, the pages and the tests need of a checker."""

    slug: str
    title: str
    question: str
    inputs: type[Any]
    check: Callable[[Any], Result]
    examples: tuple[Example, ...]
