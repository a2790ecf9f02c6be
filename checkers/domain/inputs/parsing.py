"""A request, as read from JSON or from flags, turned into an input dataclass.

Every bad field is found before anything is said; see errors.InvalidRequest.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Any, TypeVar

from checkers.domain.errors import InvalidRequest, cut, quoted
from checkers.domain.inputs.believable_days import why_not_believed
from checkers.domain.inputs.fields import Input, Kind, Spec, inputs_of
from checkers.domain.inputs.request_text import IN_WHOLE, below, refuse_unreadable
from checkers.domain.quantities.multiples import parse_multiple
from checkers.domain.quantities.quantity import parse_quantity
from checkers.domain.quantities.typed_numbers import NotAQuantity, tidy, whole_number

T = TypeVar("T")
EMPTY = (None, "")
YES = frozenset({"yes", "true", "1", "y", "on"})
NO = frozenset({"no", "false", "0", "n", "off"})


def parse_inputs(kind: type[T], request: object) -> T:
    """Turn a request into an instance of an input dataclass.

    Inputs: the dataclass; the request as plain JSON values.
    Raises InvalidRequest with one message for every bad, missing or unknown field.
    A dataclass may have a method `problems()` that returns further messages by
    field name, for rules that join several fields.
    """
    refuse_unreadable(request)
    return _parsed(kind, request, "")


def _parsed(kind: type[T], request: object, path: str) -> T:
    """Return the instance; `path` is that of the names which led here, for messages."""
    if not isinstance(request, Mapping):
        raise InvalidRequest({path or IN_WHOLE: "must be an object with named fields"})
    inputs = inputs_of(kind)
    errors = _unknown(inputs, request, path)
    values: dict[str, Any] = {}
    for one in inputs:
        try:
            _read_into(values, one, request.get(one.name), below(path, one.name))
        except InvalidRequest as bad:
            errors.update(bad.errors)
    if errors:
        raise InvalidRequest(errors)
    return _whole(kind(**values), path)


def _whole(made: T, path: str) -> T:
    problems = getattr(made, "problems", None)
    if problems is not None:
        found = {below(path, name): message for name, message in problems().items()}
        if found:
            raise InvalidRequest(found)
    return made


def _unknown(inputs: Sequence[Input], request: Mapping[str, Any], path: str) -> dict[str, str]:
    known = [one.name for one in inputs]
    return {
        cut(below(path, name)): f"is not a field here; known are {', '.join(known)}"
        for name in request
        if name not in known
    }


def _read_into(values: dict[str, Any], one: Input, raw: object, path: str) -> None:
    if isinstance(raw, str) and not one.spec.verbatim:
        raw = raw.strip()
    if raw in EMPTY:
        if one.required:
            raise InvalidRequest({path: "is needed"})
        return
    values[one.name] = READERS[one.spec.kind](one.spec, raw, path)


def _read_group(spec: Spec, raw: object, path: str) -> Any:
    assert spec.group is not None  # noqa: S101  # group() always sets it
    return _parsed(spec.group, raw, path)


def _read_many(spec: Spec, raw: object, path: str) -> tuple[Any, ...]:
    if not isinstance(raw, list | tuple):
        raise InvalidRequest({path: "must be a list"})
    if not spec.least <= len(raw) <= spec.most:
        raise InvalidRequest({path: f"must hold {spec.least} to {spec.most} entries"})
    made, errors = [], {}
    for number, entry in enumerate(raw):
        try:
            made.append(_read_group(spec, entry, f"{path}[{number}]"))
        except InvalidRequest as bad:
            errors.update(bad.errors)
    if errors:
        raise InvalidRequest(errors)
    return tuple(made)


def _read_choice(spec: Spec, raw: object, path: str) -> str:
    found = _matching_choice(spec, raw)
    if found is None:
        allowed = ", ".join(one.value for one in spec.choices)
        raise InvalidRequest({path: f"{quoted(raw)} is not one of {allowed}"})
    return found


def _matching_choice(spec: Spec, raw: object) -> str | None:
    wanted = tidy(_as_text(raw))
    return next((one.value for one in spec.choices if one.value.lower() == wanted), None)


def _read_choice_or_quantity(spec: Spec, raw: object, path: str) -> str | float:
    found = _matching_choice(spec, raw)
    if found is not None:
        return found
    try:
        return parse_quantity(_as_text(raw), spec.quantity)
    except NotAQuantity as bad:
        allowed = ", ".join(one.value for one in spec.choices)
        raise InvalidRequest({path: f"{bad}; or one of {allowed}"}) from bad


def _read_quantity(spec: Spec, raw: object, path: str) -> float:
    return _or_invalid(path, lambda: parse_quantity(_as_text(raw), spec.quantity))


def _read_multiple(spec: Spec, raw: object, path: str) -> float:
    del spec
    return _or_invalid(path, lambda: parse_multiple(_as_text(raw)))


def _read_whole_number(spec: Spec, raw: object, path: str) -> int:
    found = whole_number(_as_text(raw))
    if found is None or not spec.least <= found <= spec.most:
        raise InvalidRequest(
            {path: f"{quoted(raw)} is not a whole number from {spec.least} to {spec.most}"}
        )
    return found


def _read_text(spec: Spec, raw: object, path: str) -> str:
    if isinstance(raw, bool) or not isinstance(raw, str | int | float):
        raise InvalidRequest({path: f"must be text, not {quoted(raw)}"})
    written = _as_text(raw)
    if len(written) > spec.most:
        raise InvalidRequest({path: f"is longer than {spec.most} characters"})
    return written


def _read_day(spec: Spec, raw: object, path: str) -> date:
    del spec
    try:
        day = date.fromisoformat(_as_text(raw))
    except ValueError as bad:
        raise InvalidRequest({path: f"{quoted(raw)} is not a day such as 2026-11-24"}) from bad
    problem = why_not_believed(day)
    if problem:
        raise InvalidRequest({path: f"{day} {problem}"})
    return day


def _read_yes_no(spec: Spec, raw: object, path: str) -> bool:
    del spec
    if isinstance(raw, bool):
        return raw
    word = tidy(_as_text(raw))
    if word in YES or word in NO:
        return word in YES
    raise InvalidRequest({path: f"{quoted(raw)} is neither yes nor no"})


def _or_invalid(path: str, read: Callable[[], float]) -> float:
    try:
        return read()
    except NotAQuantity as bad:
        raise InvalidRequest({path: str(bad)}) from bad


def _as_text(raw: object) -> str:
    if isinstance(raw, str):
        return raw
    if isinstance(raw, float):
        return f"{Decimal(repr(raw)):f}".removesuffix(".0")
    return quoted(raw)


READERS: dict[Kind, Callable[[Spec, object, str], Any]] = {
    Kind.CHOICE: _read_choice,
    Kind.CHOICE_OR_QUANTITY: _read_choice_or_quantity,
    Kind.QUANTITY: _read_quantity,
    Kind.MULTIPLE: _read_multiple,
    Kind.WHOLE_NUMBER: _read_whole_number,
    Kind.TEXT: _read_text,
    Kind.DAY: _read_day,
    Kind.YES_NO: _read_yes_no,
    Kind.GROUP: _read_group,
    Kind.MANY: _read_many,
}
