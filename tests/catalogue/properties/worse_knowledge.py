"""Requests with less known than others: inputs left out, or known less exactly."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from typing import Any

from hypothesis import strategies as st

from checkers.domain.inputs.fields import Input, Kind, inputs_of
from checkers.domain.tables.glossary import QUANTITIES, UNITS

Path = tuple[str | int, ...]
Request = dict[str, Any]


def paths_in(request: Any, path: Path = ()) -> Iterator[Path]:
    """Yield the place of every value of a request, groups and entries of lists too."""
    steps: Any = ()
    if isinstance(request, dict):
        steps = request.items()
    elif isinstance(request, list):
        steps = enumerate(request)
    for step, inner in steps:
        yield (*path, step)
        yield from paths_in(inner, (*path, step))


def without(request: Request, path: Path) -> Request:
    """Return a request without one of its values."""
    left = copy.deepcopy(request)
    holder: Any = left
    for step in path[:-1]:
        holder = holder[step]
    del holder[path[-1]]
    return left


def with_value(request: Request, path: Path, value: Any) -> Request:
    """Return a request with a value put in its place."""
    changed = copy.deepcopy(request)
    holder: Any = changed
    for step in path[:-1]:
        holder = holder.setdefault(step, {}) if isinstance(holder, dict) else holder[step]
    holder[path[-1]] = value
    return changed


def name_of(path: Path) -> str:
    """Return a place as the reply names it: the numbers of entries left out."""
    return ".".join(step for step in path if isinstance(step, str))


def inputs_by_name(kind: type[Any], path: str = "") -> Iterator[tuple[str, Input]]:
    """Yield every input of a dataclass and of the groups within it, by its name."""
    for one in inputs_of(kind):
        yield f"{path}{one.name}", one
        if one.spec.group is not None:
            yield from inputs_by_name(one.spec.group, f"{path}{one.name}.")


def values_for(one: Input) -> st.SearchStrategy[Any]:
    """Return what could be given for an input, none of it refused by its kind alone."""
    spec = one.spec
    words = [choice.value for choice in spec.choices]
    if spec.kind is Kind.CHOICE:
        return st.sampled_from(words)
    if spec.kind is Kind.YES_NO:
        return st.booleans()
    if spec.kind is Kind.MULTIPLE:
        return st.sampled_from(["0.5", "1", "2", "5"])
    if spec.kind in (Kind.QUANTITY, Kind.CHOICE_OR_QUANTITY):
        return st.sampled_from([*words, *spec.suggestions, *amounts(spec.quantity)])
    return st.nothing()


def amounts(quantity: str) -> list[str]:
    """Return amounts of a quantity, each a few times the one before, over its whole range."""
    known = QUANTITIES[quantity]
    factor = float(UNITS[known.unit].factor)
    least, most = float(known.least) / factor, float(known.most) / factor
    lowest = max(least, most / 1e6)
    steps = 12
    return [f"{lowest * (most / lowest) ** (n / steps):.4g} {known.unit}" for n in range(1, steps)]
