"""What was taken because a request left it out: each default that may decide, named."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from checkers.domain.inputs.fields import Input, Kind, inputs_of

NOT_KNOWN = frozenset({"", "unknown", "silent", "other", "as-circuit"})
MAY_DECIDE = frozenset({Kind.CHOICE, Kind.CHOICE_OR_QUANTITY, Kind.QUANTITY})


@dataclass(frozen=True, slots=True)
class Assumed:
    """A field that was left out, the value taken for it, and both in words."""

    field: str
    value: str
    says: str


def assumed_in(kind: type[Any], request: object, made: Any) -> tuple[Assumed, ...]:
    """Return what was taken for the fields that a request leaves out, each once.

    Inputs: an input dataclass; the request it was read from; the instance that came of it.
    Entries of a list share one line for a field, named without the entry's number.
    """
    return tuple(dict.fromkeys(_assumed(kind, request, made, "")))


def _assumed(kind: type[Any], request: object, made: Any, path: str) -> Iterator[Assumed]:
    given = request if isinstance(request, Mapping) else {}
    for one in inputs_of(kind):
        raw, value, name = given.get(one.name), getattr(made, one.name), f"{path}{one.name}"
        if one.spec.kind is Kind.GROUP and one.spec.group is not None:
            yield from _assumed(one.spec.group, raw, value, f"{name}.")
        elif one.spec.kind is Kind.MANY and one.spec.group is not None:
            for entry, part in zip(raw or (), value, strict=True):
                yield from _assumed(one.spec.group, entry, part, f"{name}.")
        elif one.spec.kind is Kind.DAY and one.spec.left_out and _left_out(raw):
            day = made.day.isoformat()
            yield Assumed(name, day, f"{one.spec.label}: {day}, {one.spec.left_out}")
        elif _left_out(raw) and (taken := _taken(one, value)):
            yield Assumed(name, *taken)


def _left_out(raw: object) -> bool:
    return raw is None or (isinstance(raw, str) and not raw.strip())


def _taken(one: Input, value: Any) -> tuple[str, str] | None:
    """Return the value taken and the words for it, or None where nothing was taken."""
    label, spec = one.spec.label, one.spec
    if spec.left_out:
        return spec.left_out, f"{label}: {spec.left_out}"
    if spec.kind not in MAY_DECIDE or value is None or str(value) in NOT_KNOWN:
        return None
    if spec.kind is Kind.QUANTITY:
        shown = f"{value:g} {spec.unit}"
        return shown, f"{label}: {shown}"
    words = {choice.value: choice.label for choice in spec.choices}
    return str(value), f"{label}: {words[str(value)]}"
